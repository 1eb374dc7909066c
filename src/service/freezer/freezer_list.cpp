#include "service/freezer/freezer_list.h"

#include "service/freezer/bags.h"
#include "service/freezer/gone_bags.h"

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

FreezerList freezer_list(archive::Archive& archive, const FreezerQuestion& question,
                         kitchen::Date today) {
    const auto which = question.gone_too ? archive::Which::All : archive::Which::InFreezer;
    FreezerList list;
    for (auto& bag : question.words.empty() ? archive.bags(which)
                                            : archive.find(search_words(question.words), which)) {
        if (bag.state == archive::State::Frozen) {
            list.totals[bag.dish] += total_of(bag);
            list.past += bag.keep_until < today ? 1 : 0;
        }
        auto printed_since = printed_since_gone(archive, bag);
        list.bags.push_back({std::move(bag), std::move(printed_since)});
    }
    return list;
}

} // namespace thawslip::service
