#include "app/archive_against_days.h"

#include "app/day_record.h"
#include "app/print_setup.h"

#include <fmt/format.h>
#include <map>

namespace thawslip::app {
namespace {

/// The day read again; nothing where this program refuses it, or it was never printed.
std::optional<archive::DayRecord> read_again(archive::Archive& archive,
                                             const archive::StoredDay& day) {
    const auto prints = archive.prints_of(day.key);
    if (prints.empty()) {
        return std::nullopt;
    }
    const auto with = printed_with(prints.front().setup);
    const auto days = read_days({DayText{day.file, day.description}}, with.settings);
    return has_errors(days.diagnostics) || days.plans.empty() ? std::nullopt
                                                              : std::optional{record_of(days, 0)};
}

std::string listed(const std::vector<std::string>& entries) {
    return entries.empty() ? "none" : fmt::format("{}", fmt::join(entries, ", "));
}

/// What differs first; empty where nothing does.
std::string difference(const archive::PackageRecord& kept,
                       const archive::PackageRecord& described) {
    const auto say = [](const char* what, const auto& here, const auto& there) {
        return fmt::format("{} {} in the archive, {} in the description", what, here, there);
    };
    if (kept.dish != described.dish) {
        return say("is named", "\"" + kept.dish + "\"", "\"" + described.dish + "\"");
    }
    if (kept.servings != described.servings) {
        return say("serves", kept.servings, described.servings);
    }
    if (kept.bags.size() != described.bags.size()) {
        return say("has bags:", kept.bags.size(), described.bags.size());
    }
    if (kept.food && described.food && kept.food->allergens != described.food->allergens) {
        return say("contains:", listed(kept.food->allergens), listed(described.food->allergens));
    }
    // A dish that was of no kind may have got one since from a program that knows more words.
    if (kept.food && described.food && !kept.food->classes.empty() &&
        kept.food->classes != described.food->classes) {
        return say("is of the kinds:", listed(kept.food->classes), listed(described.food->classes));
    }
    return {};
}

} // namespace

std::vector<Differing> held_against_days(archive::Archive& archive) {
    std::vector<Differing> differing;
    for (const auto& day : archive.days()) {
        const auto described = read_again(archive, day);
        const auto kept = archive.packages(day.key);
        if (!described || described->packages.size() != kept.size()) {
            continue;
        }
        for (std::size_t i = 0; i < kept.size(); ++i) {
            if (auto what = difference(kept[i], described->packages[i]); !what.empty()) {
                differing.push_back({day.key, static_cast<int>(i + 1), described->packages[i],
                                     fmt::format("\"{}\" of {} {}", described->packages[i].dish,
                                                 kitchen::to_iso(day.made), what)});
            }
        }
    }
    return differing;
}

std::vector<std::string> rebuild_from_days(archive::Archive& archive) {
    std::vector<std::string> put_right;
    for (const auto& one : held_against_days(archive)) {
        archive.put_right(one.day, one.position, one.described);
        put_right.push_back(one.what);
    }
    return put_right;
}

} // namespace thawslip::app
