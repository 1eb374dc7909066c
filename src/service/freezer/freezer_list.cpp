#include "service/freezer/freezer_list.h"

#include "base/list.h"
#include "service/day/door_rows.h"
#include "service/dish_words.h"
#include "service/freezer/bags.h"
#include "service/freezer/gone_bags.h"
#include "service/freezer/packages_of_bags.h"

#include <set>

namespace thawslip::service {

BagTotal total_of(const archive::Bag& bag) {
    return {1, bag.servings, bag.weight ? bag.weight->grams : 0.0, bag.weight.has_value()};
}

BagTotal& BagTotal::operator+=(const BagTotal& more) {
    bags += more.bags;
    servings += more.servings;
    grams += more.grams;
    all_weighed = all_weighed && more.all_weighed;
    return *this;
}

namespace {

/// Bags whose dish or place has the words, the soonest date first.
std::vector<archive::Bag> bags_called(archive::Archive& archive, const FreezerQuestion& question) {
    const auto which = question.gone_too ? archive::Which::All : archive::Which::InFreezer;
    if (question.words.empty()) {
        return archive.bags(which);
    }
    const auto words = joined(question.words, " ");
    const auto by_dish = mapped<std::set<std::string>>(
        archive.find(search_words(question.words), which), &archive::Bag::id);
    auto bags = archive.bags(which);
    std::erase_if(bags, [&](const archive::Bag& bag) {
        return !by_dish.contains(bag.id) && !has_words(bag.place, words);
    });
    return bags;
}

} // namespace

std::vector<FoundBag> found_bags(archive::Archive& archive, std::vector<archive::Bag> bags,
                                 const std::vector<Avoided>& without,
                                 const kitchen::AllergenList& list) {
    std::vector<FoundBag> all;
    PackagesOfBags packages{archive};
    for (auto& bag : bags) {
        FoundBag found{std::move(bag), {}};
        found.printed_since = printed_since_gone(archive, found.bag);
        if (const auto* planned = packages.of(found.bag)) {
            found.allergens = door_allergens(*planned, list);
            found.named = avoided_in(*planned, without);
        }
        all.push_back(std::move(found));
    }
    return all;
}

FreezerList freezer_list(archive::Archive& archive, const FreezerQuestion& question,
                         kitchen::Date today, const kitchen::AllergenList& allergens) {
    FreezerList list;
    auto bags = bags_called(archive, question);
    std::erase_if(bags, [&question](const archive::Bag& bag) {
        return question.place && bag.place != *question.place;
    });
    list.bags = found_bags(archive, std::move(bags), question.without, allergens);
    for (const auto& [bag, since, contents, named] : list.bags) {
        if (bag.state == archive::State::Frozen) {
            list.totals[bag.dish] += total_of(bag);
            list.past += bag.keep_until < today ? 1 : 0;
        }
    }
    return list;
}

std::map<std::chrono::year_month, BagTotal> totals_by_month(std::span<const FoundBag> bags) {
    std::map<std::chrono::year_month, BagTotal> totals;
    for (const auto& [bag, since, contents, named] : bags) {
        if (bag.state == archive::State::Frozen) {
            totals[bag.keep_until.year() / bag.keep_until.month()] += total_of(bag);
        }
    }
    return totals;
}

std::map<std::string, BagTotal> totals_by_place(std::span<const archive::Bag> bags) {
    std::map<std::string, BagTotal> totals;
    for (const auto& bag : bags) {
        if (bag.state == archive::State::Frozen) {
            totals[bag.place] += total_of(bag);
        }
    }
    return totals;
}

} // namespace thawslip::service
