#include "app/archive_bags.h"

#include "app/archive_place.h"
#include "app/files/day_files.h"
#include "service/freezer/bags.h"
#include "service/record/print_setup.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

/// The packages of a day of the archive; none where its description cannot be read any longer.
std::vector<kitchen::PlannedPackage> packages_of(archive::Archive& archive, archive::DayKey key) {
    const auto day = archive.day(key);
    if (day.is_rotten) {
        return {};
    }
    const auto prints = archive.prints_of(key);
    const auto settings =
        prints.empty() ? Settings{} : service::printed_with(prints.front().setup).settings;
    auto days = plan_days(std::vector<DayText>{{day.file, day.description, day.batches}}, settings);
    return days.plans.empty() ? std::vector<kitchen::PlannedPackage>{}
                              : std::move(days.plans.front().packages);
}

} // namespace

std::optional<std::vector<archive::Bag>>
bags_by_id(archive::Archive& archive, const std::vector<std::string>& typed, Console console) {
    auto bags = service::bags_by_id(archive, typed);
    console.err << to_text(bags.messages);
    return std::move(bags.value);
}

const kitchen::PlannedPackage* PackagesOfBags::of(const archive::Bag& bag) {
    const auto [known, is_new] = days_.try_emplace(bag.day);
    if (is_new) {
        known->second = packages_of(*archive_, bag.day);
    }
    const auto has_bag = [&bag](const kitchen::PlannedPackage& planned) {
        return std::ranges::find(planned.bags, bag.id, &kitchen::Bag::id) != planned.bags.end();
    };
    const auto found = std::ranges::find_if(known->second, has_bag);
    return found == known->second.end() ? nullptr : &*found;
}

std::string rotten_text(const archive::StoredDay& day) {
    return fmt::format("the description of {}{} is not what was recorded: its hash is another, so "
                       "nothing is said by it\n    hint: a backup has it: thawslip archive restore "
                       "FILE; all that is wrong is named by: thawslip archive check",
                       kitchen::to_iso(day.made),
                       day.file.empty() ? "" : ", read from " + day.file);
}

std::string PackagesOfBags::why_not(const archive::Bag& bag) const {
    const auto day = archive_->day(bag.day);
    return day.is_rotten
               ? rotten_text(day)
               : fmt::format("the description of bag {} cannot be read any longer", bag.id);
}

std::optional<KnownBag> package_of(const std::string& typed_id, const Settings& settings,
                                   Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.err << "error: nothing has been printed yet, so no bag is known\n";
        return std::nullopt;
    }
    const auto bags = bags_by_id(*archive, {typed_id}, console);
    if (!bags) {
        return std::nullopt;
    }
    PackagesOfBags packages{*archive};
    const auto* package = packages.of(bags->front());
    if (!package) {
        console.err << fmt::format("error: {}\n", packages.why_not(bags->front()));
        return std::nullopt;
    }
    return KnownBag{bags->front(), *package};
}

} // namespace thawslip::app
