#include "service/freezer/freezer_list.h"

#include "kitchen/texts/text.h"
#include "service/day/door_rows.h"
#include "service/freezer/bags.h"
#include "service/freezer/gone_bags.h"
#include "service/freezer/packages_of_bags.h"

#include <algorithm>
#include <set>

namespace thawslip::service {
namespace {

BagTotal total_of(const archive::Bag& bag) {
    return {1, bag.servings, bag.weight ? bag.weight->grams : 0.0, bag.weight.has_value()};
}

} // namespace

BagTotal& BagTotal::operator+=(const BagTotal& more) {
    bags += more.bags;
    servings += more.servings;
    grams += more.grams;
    all_weighed = all_weighed && more.all_weighed;
    return *this;
}

namespace {

/// Whether each word begins a word of the bag's place.
bool lies_there(const archive::Bag& bag, const std::vector<std::string>& words) {
    const auto place = kitchen::words_of(search_words({bag.place}));
    const auto wanted = kitchen::words_of(search_words(words));
    return !wanted.empty() && std::ranges::all_of(wanted, [&place](const std::string& word) {
        return std::ranges::any_of(
            place, [&word](const std::string& whole) { return whole.starts_with(word); });
    });
}

/// Bags whose dish or place has the words, the soonest date first.
std::vector<archive::Bag> found_bags(archive::Archive& archive, const FreezerQuestion& question) {
    const auto which = question.gone_too ? archive::Which::All : archive::Which::InFreezer;
    if (question.words.empty()) {
        return archive.bags(which);
    }
    std::set<std::string> by_dish;
    for (const auto& bag : archive.find(search_words(question.words), which)) {
        by_dish.insert(bag.id);
    }
    auto bags = archive.bags(which);
    std::erase_if(bags, [&](const archive::Bag& bag) {
        return !by_dish.contains(bag.id) && !lies_there(bag, question.words);
    });
    return bags;
}

} // namespace

FreezerList freezer_list(archive::Archive& archive, const FreezerQuestion& question,
                         kitchen::Date today, const kitchen::AllergenList& allergens) {
    FreezerList list;
    PackagesOfBags packages{archive};
    for (auto& bag : found_bags(archive, question)) {
        if (bag.state == archive::State::Frozen) {
            list.totals[bag.dish] += total_of(bag);
            list.past += bag.keep_until < today ? 1 : 0;
        }
        FoundBag found{std::move(bag), {}};
        found.printed_since = printed_since_gone(archive, found.bag);
        if (const auto* planned = packages.of(found.bag)) {
            found.allergens = door_allergens(*planned, allergens);
            found.named = avoided_in(*planned, question.without);
        }
        list.bags.push_back(std::move(found));
    }
    return list;
}

} // namespace thawslip::service
