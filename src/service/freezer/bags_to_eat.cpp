#include "service/dish_words.h"
#include "service/freezer/bags.h"
#include "service/freezer/named_bags.h"
#include "service/freezer/packages_of_bags.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <utility>

namespace thawslip::service {
namespace {

bool is_one(archive::Archive& archive, const std::string& part) {
    return named_bags(archive, part, archive::Which::InFreezer).value.has_value();
}

/// "lentil stew" is one dish where a bag has both words; "stew compote" are two.
std::vector<std::string> dishes_in(archive::Archive& archive,
                                   const std::vector<std::string>& typed) {
    auto parts = parts_of(archive, typed);
    if (parts.size() != 1 || typed.size() < 2 || is_one(archive, parts.front())) {
        return parts;
    }
    return typed;
}

/// The first bags of each dish and each of its sizes, as a plan of a description takes them.
std::vector<archive::Bag> first_of_each(const std::vector<archive::Bag>& bags, int of_each,
                                        Messages& messages) {
    std::map<std::pair<std::string, int>, std::size_t> there;
    std::vector<archive::Bag> first;
    for (const auto& bag : bags) {
        if (there[{bag.dish, bag.size}]++ < static_cast<std::size_t>(of_each)) {
            first.push_back(bag);
        }
    }
    for (const auto& bag : bags) {
        auto& count = there.at({bag.dish, bag.size});
        if (count > 0 && count < static_cast<std::size_t>(of_each)) {
            messages.caution(
                too_few_bags(count, of_each, bag.dish, bag.size == 0 ? 0 : bag.servings));
            count = 0; // said once
        }
    }
    return first;
}

void judge(const archive::Bag& bag, Messages& messages) {
    const auto which = fmt::format("bag {} ({})", bag.id, bag.dish);
    if (is_gone(bag)) {
        messages.error(fmt::format("{} was {} on {}", which, shown_word(bag.state),
                                   bag.changed.substr(0, 10)));
        return;
    }
    if (bag.state == archive::State::Out) {
        messages.caution(
            fmt::format("{} is out of the freezer since {}", which, bag.changed.substr(0, 16)));
    }
}

/// Adds a bag to its package, which may stand there already with another bag.
void add(std::vector<kitchen::PlannedPackage>& packages, kitchen::PlannedPackage package,
         const std::string& id) {
    const auto known = std::ranges::find_if(packages, [&](const kitchen::PlannedPackage& other) {
        return other.package.dish == package.package.dish && other.made == package.made &&
               other.batch.size == package.batch.size &&
               other.keep_until.date == package.keep_until.date;
    });
    const auto bag = *std::ranges::find(package.bags, id, &kitchen::Bag::id);
    if (known != packages.end()) {
        if (std::ranges::find(known->bags, id, &kitchen::Bag::id) == known->bags.end()) {
            known->bags.push_back(bag);
        }
        return;
    }
    package.bags = {bag};
    packages.push_back(std::move(package));
}

/// The bags that are meant; what stands against eating them is said.
std::vector<archive::Bag> bags_to_eat(archive::Archive& archive, const BagsToEat& wanted,
                                      Messages& messages) {
    std::vector<archive::Bag> bags;
    for (const auto& one : dishes_in(archive, wanted.typed)) {
        const auto meant = named_bags(archive, one, archive::Which::InFreezer);
        messages.add(meant.messages);
        if (!meant) {
            return {};
        }
        std::ranges::move(meant.value->by_id
                              ? meant.value->bags
                              : first_of_each(meant.value->bags, wanted.of_each, messages),
                          std::back_inserter(bags));
    }
    for (const auto& bag : bags) {
        judge(bag, messages);
    }
    return bags;
}

} // namespace

Outcome<std::vector<kitchen::PlannedPackage>> packages_to_eat(archive::Archive& archive,
                                                              const BagsToEat& wanted) {
    Outcome<std::vector<kitchen::PlannedPackage>> outcome;
    const auto bags = bags_to_eat(archive, wanted, outcome.messages);
    if (outcome.messages.have_errors()) {
        return outcome;
    }
    PackagesOfBags known{archive};
    std::vector<kitchen::PlannedPackage> packages;
    for (const auto& bag : bags) {
        const auto* package = known.of(bag);
        if (package == nullptr) {
            known.refuse(bag, outcome.messages);
            return outcome;
        }
        add(packages, *package, bag.id);
    }
    outcome.value = std::move(packages);
    return outcome;
}

} // namespace thawslip::service
