#pragma once

#include "kitchen/day.h"
#include "kitchen/measures/unit_style.h"

#include <string>

namespace thawslip::kitchen {

/// What a temperature is for decides which way it may be rounded.
enum class TemperatureUse {
    SafeMinimum, ///< never below: 145 °F is 63 °C
    ColdLimit,   ///< never above: 40 °F is 4 °C
    Oven,        ///< as dials are marked: steps of 10 °C and 25 °F
};

/// The temperature as written and, by the style, in the other scale: `74 °C (165 °F)`.
///
/// A number of degrees that is an agency's figure converted, 74 °C for 165 °F, is turned back
/// into that figure, not into 166 °F.
std::string to_text(Temperature temperature, TemperatureUse use, const UnitStyle& style);

/// A figure that an agency publishes in Fahrenheit, in whole degrees, the scale of the kitchen's
/// own measures first: `165 °F (74 °C)` in the US, `74 °C (165 °F)` elsewhere.
std::string published_text(double fahrenheit, TemperatureUse use, const UnitStyle& style);

} // namespace thawslip::kitchen
