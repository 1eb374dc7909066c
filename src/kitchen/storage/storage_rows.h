#pragma once

// What the storage lists' tables have in common: how one of their rows is chosen.

#include "kitchen/texts/text.h"

#include <optional>
#include <string_view>
#include <tuple>
#include <vector>

namespace thawslip::kitchen {

/// The row for a food: that of the rule set that is asked first, else the first that another has.
template <class Row>
std::optional<Row> row_for(const std::vector<Row>& rows, std::string_view food,
                           std::string_view rule_set) {
    std::optional<Row> found;
    for (const auto& row : rows) {
        if (!same_but_for_case(row.food, food)) {
            continue;
        }
        if (row.rule_set == rule_set) {
            return row;
        }
        if (!found) {
            found = row;
        }
    }
    return found;
}

/// Whether one row's time is over before another's: by the low end of the range, then the high.
template <class Row>
bool keeps_shorter(const Row& a, const Row& b) {
    return std::tie(a.low, a.high) < std::tie(b.low, b.high);
}

} // namespace thawslip::kitchen
