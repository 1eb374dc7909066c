#pragma once

#include "typeset/text_range.h"

#include <string_view>
#include <vector>

namespace thawslip::typeset {

/// Stretches inside which no line should end although UAX #14 lets it: a number and its unit, a
/// range, a date, a closing mark and what it closes. Rising, none overlapping another.
/// \pre well-formed UTF-8, NFC
std::vector<TextRange> kept_together(std::string_view text);

/// Places where a line had better not end, though it may: between a figure and what it counts
/// ("2 limes"), a measure and the next of one amount ("¾ cup 1½ tbsp"), or the same in other units
/// ("21 °C (70 °F)"). All together they would be wider than many a line. Rising.
std::vector<std::size_t> better_together(std::string_view text);

/// What the rules are, each with words that it holds together: for tests and for a reader.
struct KitchenRule {
    const char* reason;
    std::vector<std::string_view> examples;
};
std::vector<KitchenRule> kitchen_rules();

} // namespace thawslip::typeset
