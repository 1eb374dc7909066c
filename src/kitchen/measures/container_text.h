#pragma once

#include "base/result.h"
#include "kitchen/day.h"
#include "kitchen/measures/text_fault.h"

#include <string_view>

namespace thawslip::kitchen {

/// Reads how large a bag, a tray or a box is: "20 x 28 cm", "8 1/2 × 11 in", "20 x 15 x 5 cm",
/// where the third is its height. A number without a unit has that of the last.
Result<Container, TextFault> parse_container(std::string_view text);

} // namespace thawslip::kitchen
