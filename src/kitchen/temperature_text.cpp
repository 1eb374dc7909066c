#include "kitchen/temperature_text.h"

#include "kitchen/text.h"

#include <cmath>
#include <optional>

namespace thawslip::kitchen {
namespace {

double to_celsius(double fahrenheit) {
    return (fahrenheit - 32.0) * 5.0 / 9.0;
}

double to_fahrenheit(double celsius) {
    return celsius * 9.0 / 5.0 + 32.0;
}

/// Rounds the way that is safe; a hair's breadth is the computer's, not the cook's.
double whole_degrees(double degrees, TemperatureUse use) {
    constexpr double hair = 1e-6;
    switch (use) {
    case TemperatureUse::SafeMinimum: return std::ceil(degrees - hair);
    case TemperatureUse::ColdLimit: return std::floor(degrees + hair);
    case TemperatureUse::Oven: return std::round(degrees);
    }
    return degrees;
}

double to_step(double degrees, double step) {
    return std::round(degrees / step) * step;
}

/// The agency's figure in Fahrenheit that `celsius` is, to the whole degree or, as charts also
/// print it, to a tenth. FoodSafety.gov, Safe Minimum Internal Temperatures; USDA FSIS, Leftovers
/// and Food Safety (40, 140) and Freezing and Food Safety (0).
std::optional<double> published_fahrenheit(double celsius, TemperatureUse use) {
    constexpr double to_a_tenth = 0.05 + 1e-6;
    for (const double published : {0.0, 40.0, 140.0, 145.0, 160.0, 165.0}) {
        const double exact = to_celsius(published);
        if (std::abs(whole_degrees(exact, use) - celsius) < 1e-6 ||
            std::abs(exact - celsius) < to_a_tenth) {
            return published;
        }
    }
    return std::nullopt;
}

double turned_to_fahrenheit(double celsius, TemperatureUse use) {
    if (use == TemperatureUse::Oven) {
        return to_step(to_fahrenheit(celsius), 25.0);
    }
    const auto published = published_fahrenheit(celsius, use);
    return published ? *published : whole_degrees(to_fahrenheit(celsius), use);
}

double turned_to_celsius(double celsius, TemperatureUse use) {
    return use == TemperatureUse::Oven ? to_step(celsius, 10.0) : whole_degrees(celsius, use);
}

std::string degrees(double value, int places, const char* scale, const UnitStyle& style) {
    return decimal(value, places, style.decimal_mark) + scale;
}

} // namespace

std::string to_text(Temperature temperature, TemperatureUse use, const UnitStyle& style) {
    const double celsius = temperature.celsius;
    if (temperature.written_in == TemperatureScale::Celsius) {
        return in_style(degrees(celsius, 1, " °C", style),
                        degrees(turned_to_fahrenheit(celsius, use), 0, " °F", style), true, style);
    }
    return in_style(degrees(to_fahrenheit(celsius), 1, " °F", style),
                    degrees(turned_to_celsius(celsius, use), 0, " °C", style), false, style);
}

std::string published_text(double fahrenheit, TemperatureUse use, const UnitStyle& style) {
    const auto written = degrees(whole_degrees(fahrenheit, use), 0, " °F", style);
    const auto turned = degrees(whole_degrees(to_celsius(fahrenheit), use), 0, " °C", style);
    return style.measures == Measures::Us ? in_style(written, turned, false, style)
                                          : in_style(turned, written, true, style);
}

} // namespace thawslip::kitchen
