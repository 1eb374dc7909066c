#pragma once

#include "base/result.h"
#include "kitchen/measures/text_fault.h"

#include <chrono>
#include <string>
#include <string_view>

namespace thawslip::kitchen {

/// Reads how long food stays at a temperature: "2 min", "30 s", "1 h". Of a range, the shorter
/// time. Above 0 and at most 72 h.
Result<std::chrono::seconds, TextFault> parse_hold(std::string_view text);

/// `2 min`, `30 s`, `1 min 30 s`: the symbols are the same in every language.
std::string hold_text(std::chrono::seconds time);

} // namespace thawslip::kitchen
