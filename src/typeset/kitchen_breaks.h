#pragma once

#include "typeset/text_range.h"

#include <string_view>
#include <vector>

namespace thawslip::typeset {

/// Stretches inside which no line should end although UAX #14 lets it: a number and its unit, a
/// range, a date, a closing mark and what it closes. Rising, none overlapping another.
/// \pre well-formed UTF-8, NFC
std::vector<TextRange> kept_together(std::string_view text);

/// What the rules are, each with words that it holds together: for tests and for a reader.
struct KitchenRule {
    const char* reason;
    std::vector<std::string_view> examples;
};
std::vector<KitchenRule> kitchen_rules();

} // namespace thawslip::typeset
