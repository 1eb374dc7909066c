#pragma once

#include "base/length.h"
#include "base/result.h"

#include <cstddef>
#include <string>
#include <string_view>

namespace thawslip {

struct LengthFault {
    std::size_t offset = 0; ///< byte of the text where it is wrong
    std::string message;
};

/// Reads a length with its unit: "4 in", "2 5/8 in", "100 mm", "1.5 cm", "12 pt", "-0.5 mm".
/// A comma may stand for the decimal point. Refused: no unit, nothing finite, over 10 metres.
Result<Length, LengthFault> parse_length(std::string_view text);

/// A length as messages print it: `30 mm`, `1.2 in`.
std::string millimetres_text(Length length);

} // namespace thawslip
