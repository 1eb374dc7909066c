#include "service/freezer/freezer_counts.h"

namespace thawslip::service {

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
