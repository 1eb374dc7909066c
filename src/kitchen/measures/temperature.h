#pragma once

#include "base/result.h"
#include "kitchen/day.h"
#include "kitchen/measures/time_range.h"

#include <string_view>

namespace thawslip::kitchen {

constexpr double to_celsius(double fahrenheit) {
    return (fahrenheit - 32.0) * 5.0 / 9.0;
}

constexpr double to_fahrenheit(double celsius) {
    return celsius * 9.0 / 5.0 + 32.0;
}

/// Reads "74 °C", "165 °F", "74 C", "165F", "165 degrees Fahrenheit": 0 to 300 °C.
Result<Temperature, TextFault> parse_temperature(std::string_view text);

} // namespace thawslip::kitchen
