#pragma once

#include "base/result.h"
#include "kitchen/day.h"
#include "kitchen/measures/time_range.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// Reads when something goes in: "at the start", "after 4 h", "halfway", "last 10 min",
/// "10 min before the end", "at serving", and the same in German and Spanish: "in den letzten 10
/// Minuten", "al servir", "vor dem Servieren"; letter case does not matter. "At the end" is
/// refused: it may mean the end of cooking, where raw food still gets hot, or the table.
Result<When, TextFault> parse_when(std::string_view text);

/// The forms `parse_when` takes, for messages and for finding the nearest.
std::vector<std::string> when_forms();

} // namespace thawslip::kitchen
