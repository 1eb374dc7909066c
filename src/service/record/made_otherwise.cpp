#include "service/record/made_otherwise.h"

#include "base/list.h"

#include <algorithm>
#include <chrono>
#include <fmt/format.h>
#include <map>

namespace thawslip::service {
namespace {

/// A file that is filled in anew is of the next packing day, weeks later: common practice, no
/// source.
constexpr std::chrono::days a_week{7};

bool is_near(kitchen::Date one, kitchen::Date other) {
    const auto apart = std::chrono::sys_days{one} - std::chrono::sys_days{other};
    return std::chrono::abs(apart) <= a_week;
}

bool names_dish(const archive::DayRecord& day, const archive::Bag& bag) {
    return contains(mapped(day.packages, &archive::PackageRecord::dish), bag.dish);
}

using ByDay = std::map<kitchen::Date, std::vector<std::string>>;

/// Ids of the bags that a file's other dates of a week gave, by those dates.
ByDay left_behind(archive::Archive& archive, const std::vector<archive::Bag>& there,
                  const archive::DayRecord& day) {
    ByDay found;
    for (const auto& bag : there) {
        if (!day.file.empty() && bag.made != day.made && is_near(bag.made, day.made) &&
            names_dish(day, bag) && archive.day(bag.day).file == day.file) {
            found[bag.made].push_back(bag.id);
        }
    }
    return found;
}

} // namespace

Messages made_otherwise(archive::Archive& archive, const archive::PrintRecord& print,
                        const archive::Recorded& recorded) {
    Messages messages;
    const auto there = recorded.new_bags > 0 ? archive.bags(archive::Which::InFreezer)
                                             : std::vector<archive::Bag>{};
    for (const auto& day : print.days) {
        for (const auto& [made, ids] : left_behind(archive, there, day)) {
            messages.caution(
                fmt::format("{} was printed with made = {} before, and its bags of that day count "
                            "as being in the freezer beside these",
                            day.file, kitchen::to_iso(made)),
                {fmt::format("if only the date was put right, there are none: thawslip freezer "
                             "never-filled {}",
                             joined(ids, " "))});
        }
    }
    return messages;
}

} // namespace thawslip::service
