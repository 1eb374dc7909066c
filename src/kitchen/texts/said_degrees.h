#pragma once

#include "kitchen/texts/lexicon.h"

#include <cstddef>
#include <vector>

namespace thawslip::kitchen {

/// A temperature in running text, and the word of it that is its number.
struct SaidDegrees {
    double celsius = 0;
    std::size_t word = 0;
    bool has_unit = true; ///< false for "90" alone, as cooks write an oven's dial
};

/// All temperatures that a text names: "90 °C", "80-90 Grad", "200F", "275 degrees", "oven 90".
/// Where no scale is named it is the one that an oven would have at that number. A number without
/// a unit counts from 50 on, where no time, length or weight follows.
std::vector<SaidDegrees> said_degrees(const WordedText& text);

} // namespace thawslip::kitchen
