#include "service/freezer/packages_of_bags.h"

#include "service/days.h"
#include "service/freezer/bags.h"
#include "service/record/print_setup.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
std::vector<kitchen::PlannedPackage> packages_of_day(archive::Archive& archive,
                                                     archive::DayKey key) {
    const auto day = archive.day(key);
    if (day.is_rotten) {
        return {};
    }
    const auto setup = archive.newest_setup(key);
    const auto with = setup ? printed_with(*setup) : PrintedWith{};
    if (!with) {
        return {};
    }
    auto days = plan_days(std::vector<DayText>{{day.file, day.description, day.batches}},
                          with.value().settings);
    return days.plans.empty() ? std::vector<kitchen::PlannedPackage>{}
                              : std::move(days.plans.front().packages);
}

const kitchen::PlannedPackage* PackagesOfBags::of(const archive::Bag& bag) {
    const auto [known, is_new] = days_.try_emplace(bag.day);
    if (is_new) {
        known->second = packages_of_day(*archive_, bag.day);
    }
    const auto has_bag = [&bag](const kitchen::PlannedPackage& planned) {
        return std::ranges::find(planned.bags, bag.id, &kitchen::Bag::id) != planned.bags.end();
    };
    const auto found = std::ranges::find_if(known->second, has_bag);
    return found == known->second.end() ? nullptr : &*found;
}

void PackagesOfBags::refuse(const archive::Bag& bag, Messages& messages) const {
    const auto day = archive_->day(bag.day);
    if (day.is_rotten) {
        refuse_rotten(day, messages);
    } else {
        messages.error(fmt::format("the description of bag {} cannot be read any longer", bag.id));
    }
}

void refuse_rotten(const archive::StoredDay& day, Messages& messages,
                   const std::string& consequence) {
    messages.error(
        fmt::format("the description of {}{} is not what was recorded: its hash is another, so "
                    "nothing is said by it{}",
                    kitchen::to_iso(day.made), day.file.empty() ? "" : ", read from " + day.file,
                    consequence),
        {"a backup has it: thawslip archive restore FILE; all that is wrong is named by: thawslip "
         "archive check"});
}

namespace {

/// Words mean bags that are there, where any is.
void keep_those_there(std::vector<archive::Bag>& bags) {
    if (!std::ranges::all_of(bags, is_gone)) {
        std::erase_if(bags, is_gone);
    }
}

/// Of bags of one package each says the same.
Outcome<std::vector<archive::Bag>> one_bag(archive::Archive& archive, const std::string& typed,
                                           const ChooseBags& choose) {
    auto named = named_bags(archive, typed, archive::Which::All);
    Outcome<std::vector<archive::Bag>> outcome{{}, std::move(named.messages)};
    if (!named) {
        return outcome;
    }
    auto& bags = named.value->bags;
    keep_those_there(bags);
    if (std::ranges::all_of(bags, [&bags](const archive::Bag& bag) {
            return are_of_one_package(bag, bags.front());
        })) {
        outcome.value = {bags.front()};
        return outcome;
    }
    return chosen_bags(archive, {{typed}, {bags.front().state}, choose, HowMany::One});
}

} // namespace

Outcome<KnownBag> known_bag(archive::Archive& archive, const std::string& typed,
                            const ChooseBags& choose) {
    auto bags = one_bag(archive, typed, choose);
    Outcome<KnownBag> outcome{{}, std::move(bags.messages)};
    if (!bags || bags.value->empty()) {
        return outcome;
    }
    PackagesOfBags packages{archive};
    auto& bag = bags.value->front();
    if (const auto* package = packages.of(bag)) {
        outcome.value = KnownBag{std::move(bag), *package};
    } else {
        packages.refuse(bag, outcome.messages);
    }
    return outcome;
}

} // namespace thawslip::service
