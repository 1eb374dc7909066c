#include "service/print/printed_bags.h"

#include "base/list.h"
#include "kitchen/bag_id.h"
#include "service/freezer/packages_of_bags.h"
#include "service/record/print_setup.h"

#include <algorithm>
#include <iterator>
#include <span>

namespace thawslip::service {
namespace {

/// KindRows of print that together are what is asked for: a bag has it that is in one of each row.
using KindRows = std::vector<std::vector<std::string_view>>;

KindRows kinds_of(What what) {
    switch (what) {
    case What::Cards: return {{"cards", "finishing cards"}, {"cards", "cook-day cards"}};
    case What::FinishingCards: return {{"cards", "finishing cards"}};
    case What::CookDayCards: return {{"cards", "cook-day cards"}};
    case What::Labels:
    case What::Lists:
    case What::DaySheets:
    case What::StationSheets:
    case What::Shopping:
    case What::DoorList:
    case What::PlanSheet: break;
    }
    return {{"labels"}};
}

std::set<int> lineages_of(archive::Archive& archive, const std::set<std::string>& bags) {
    std::set<archive::DayKey> days;
    for (const auto& id : bags) {
        if (const auto bag = archive.bag(id)) {
            days.insert(bag->day);
        }
    }
    return mapped<std::set<int>>(
        days, [&archive](archive::DayKey day) { return archive.day(day).lineage; });
}

/// The newest id of a bag that a description tells of; empty where it is another's here.
std::string newest_id(archive::Archive& archive, archive::DayKey day, std::size_t position,
                      const archive::PackageRecord& package, int number) {
    constexpr int most_attempts = 4; // ids of one day that would be the same: see fresh_bag_id
    for (int attempt = 0; attempt < most_attempts; ++attempt) {
        const auto id =
            kitchen::bag_id({package.dish, package.made, number, package.batch}, attempt);
        if (archive.is_of(id, day, position)) {
            const auto bag = archive.bag(id);
            return bag ? bag->id : std::string{};
        }
    }
    return {};
}

/// A description as it was once printed.
struct Printed {
    archive::StoredDay day;
    std::vector<LabelFacts> packages;
    std::vector<archive::StoredPrint> prints; ///< the newest first
};

/// What labels of a description said: as it was recorded and, of what is added, as it is read now.
std::vector<LabelFacts> facts_of(archive::Archive& archive, archive::DayKey day) {
    const auto described = packages_of_day(archive, day);
    auto facts = mapped(archive.packages(day), [](archive::PackageRecord& record) {
        return LabelFacts{std::move(record), std::nullopt};
    });
    for (std::size_t i = 0; i < facts.size() && described.size() == facts.size(); ++i) {
        facts[i].added = label_facts(described[i]).added;
    }
    return facts;
}

std::vector<Printed> printed_of(archive::Archive& archive, const std::set<std::string>& bags) {
    std::vector<Printed> all;
    for (const int lineage : lineages_of(archive, bags)) {
        for (auto& day : archive.revisions(lineage)) {
            const auto key = day.key;
            all.push_back({std::move(day), facts_of(archive, key), archive.prints_of(key)});
        }
    }
    return all;
}

/// Adds the bags of one description that one of its prints has. Descriptions come the oldest
/// first, so that what the newest says stays.
void add(archive::Archive& archive, const Printed& printed,
         const std::vector<std::string_view>& kinds, PrintedBags& found) {
    std::vector<std::optional<std::set<std::string>>> parts;
    for (const auto& print : printed.prints) {
        if (std::ranges::find(kinds, print.setup.what) != kinds.end()) {
            parts.push_back(part_of(print));
        }
    }
    for (std::size_t i = 0; i < printed.packages.size() && !parts.empty(); ++i) {
        const auto& package = printed.packages[i].record;
        for (int number = 1; number <= static_cast<int>(package.bags.size()); ++number) {
            const auto printed_as =
                kitchen::bag_id({package.dish, package.made, number, package.batch});
            const auto id = newest_id(archive, printed.day.key, i, package, number);
            if (!id.empty() && std::ranges::any_of(parts, [&](const auto& part) {
                    return !part || part->contains(id) || part->contains(printed_as);
                })) {
                found.insert_or_assign(id, printed.packages[i]);
            }
        }
    }
}

} // namespace

std::optional<std::set<std::string>> part_of(const archive::StoredPrint& print) {
    const auto with = printed_with(print.setup);
    if (!with) {
        return std::set<std::string>{};
    }
    const auto& ids = with.value().look.part.ids;
    return ids.empty() ? std::nullopt
                       : std::optional{std::set<std::string>{ids.begin(), ids.end()}};
}

PrintedBags printed_bags(archive::Archive& archive, What what, const std::set<std::string>& bags) {
    const auto printed = printed_of(archive, bags);
    std::optional<PrintedBags> all;
    for (const auto& kinds : kinds_of(what)) {
        PrintedBags found;
        for (const auto& one : printed) {
            add(archive, one, kinds, found);
        }
        if (all) {
            std::erase_if(*all, [&](const auto& bag) { return !found.contains(bag.first); });
        } else {
            all = std::move(found);
        }
    }
    return all.value_or(PrintedBags{});
}

std::set<std::string> printed_already(archive::Archive& archive, What what, const Days& days) {
    const auto known = printed_bags(archive, what, bag_ids(days));
    std::set<std::string> printed;
    for (const auto& planned : packages_of(days)) {
        const auto now = label_facts(planned);
        std::ranges::copy_if(now.record.bags, std::inserter(printed, printed.end()),
                             [&known, &now](const std::string& id) {
                                 const auto before = known.find(id);
                                 return before != known.end() &&
                                        !is_relabelled(before->second, now);
                             });
    }
    return printed;
}

} // namespace thawslip::service
