#include "service/freezer/freezer_counts.h"

namespace thawslip::service {
namespace {

template <class Key, class KeyOf>
std::map<Key, BagTotal> totals_by(std::span<const FoundBag> bags, KeyOf key_of) {
    std::map<Key, BagTotal> totals;
    for (const auto& found : bags) {
        if (found.bag.state == archive::State::Frozen) {
            totals[key_of(found.bag)] += total_of(found.bag);
        }
    }
    return totals;
}

} // namespace

std::map<std::chrono::year_month, BagTotal> totals_by_month(std::span<const FoundBag> bags) {
    return totals_by<std::chrono::year_month>(bags, [](const archive::Bag& bag) {
        return bag.keep_until.year() / bag.keep_until.month();
    });
}

std::map<std::string, BagTotal> totals_by_place(std::span<const FoundBag> bags) {
    return totals_by<std::string>(bags, [](const archive::Bag& bag) { return bag.place; });
}

} // namespace thawslip::service
