#pragma once

#include "base/result.h"
#include "kitchen/day.h"
#include "kitchen/measures/text_fault.h"

#include <string_view>

namespace thawslip::kitchen {

/// Reads "45 min", "7-9 h", "7–9 h", "1 h 30 min", "1½ h", "90-120 min", "45 min-1 h"; letter case
/// does not matter. Whole minutes, above 0 and at most 72 h.
Result<TimeRange, TextFault> parse_time_range(std::string_view text);

} // namespace thawslip::kitchen
