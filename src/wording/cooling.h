#pragma once

#include "kitchen/heat/cooling_advice.h"
#include "wording/style.h"

#include <string>

namespace thawslip::wording {

/// What to do with a bag that is filled hot, with its hours: "If filled hot: cool the closed bag in
/// ice water, to 70 °F (21 °C) in 20 min…".
std::string say_cooling(const kitchen::CoolingAdvice& advice, const Style& style);

} // namespace thawslip::wording
