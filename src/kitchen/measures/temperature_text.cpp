#include "kitchen/measures/temperature_text.h"

#include "kitchen/measures/temperature.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>

namespace thawslip::kitchen {
namespace {

/// Rounds the way that is safe; a hair's breadth is the computer's, not the cook's.
double whole_degrees(double degrees, TemperatureUse use) {
    constexpr double hair = 1e-6;
    return use == TemperatureUse::ColdLimit ? std::floor(degrees + hair)
                                            : std::ceil(degrees - hair);
}

double to_step(double degrees, double step) {
    return std::round(degrees / step) * step;
}

/// A figure as agencies print it in both scales.
struct Printed {
    double fahrenheit;
    double celsius;
};
/// FoodSafety.gov, Cook to a Safe Minimum Internal Temperature (140, 145, 160, 165); Health Canada,
/// Safe internal cooking temperatures (158, 160, 180). 160 °F is 71 °C to all of them.
constexpr Printed safe_minimums[] = {{140, 60}, {145, 63}, {158, 70},
                                     {160, 71}, {165, 74}, {180, 82}};
/// USDA FSIS, Freezing and Food Safety (0), Leftovers and Food Safety (40, 140).
constexpr Printed cold_limits[] = {{0, -18}, {40, 4}, {140, 60}};

std::span<const Printed> printed(TemperatureUse use) {
    switch (use) {
    case TemperatureUse::SafeMinimum: return safe_minimums;
    case TemperatureUse::ColdLimit: return cold_limits;
    case TemperatureUse::Oven: break;
    }
    return {};
}

/// The agency's figure that `celsius` is, in whole degrees of either scale or, as charts also
/// print it, to a tenth.
std::optional<Printed> published(double celsius, TemperatureUse use) {
    constexpr double to_a_tenth = 0.05 + 1e-6;
    for (const auto& figure : printed(use)) {
        if (std::abs(figure.celsius - celsius) < 1e-6 ||
            std::abs(to_celsius(figure.fahrenheit) - celsius) < to_a_tenth) {
            return figure;
        }
    }
    return std::nullopt;
}

/// The degrees between two marks of an oven's dial. Below boiling there is none: food lies in a
/// water bath or a low oven for hours, and a step of a dial may be what keeps it safe.
struct DialStep {
    double below; ///< °C
    double celsius;
    double fahrenheit;
};
constexpr DialStep dial_steps[] = {{100, 1, 1}, {121, 5, 5}, {1000, 10, 25}};

/// As a dial has it; below boiling never less than is meant.
double on_dial(double degrees, double step) {
    return step > 1 ? to_step(degrees, step) : whole_degrees(degrees, TemperatureUse::SafeMinimum);
}

const DialStep& step_at(double celsius) {
    return *std::ranges::find_if(dial_steps,
                                 [celsius](const DialStep& step) { return celsius < step.below; });
}

double turned_to_fahrenheit(double celsius, TemperatureUse use) {
    if (use == TemperatureUse::Oven) {
        return on_dial(to_fahrenheit(celsius), step_at(celsius).fahrenheit);
    }
    const auto figure = published(celsius, use);
    return figure ? figure->fahrenheit : whole_degrees(to_fahrenheit(celsius), use);
}

double turned_to_celsius(double celsius, TemperatureUse use) {
    if (use == TemperatureUse::Oven) {
        return on_dial(celsius, step_at(celsius).celsius);
    }
    const auto figure = published(celsius, use);
    return figure ? figure->celsius : whole_degrees(celsius, use);
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
    const auto turned = degrees(turned_to_celsius(to_celsius(fahrenheit), use), 0, " °C", style);
    return style.measures == Measures::Us ? in_style(written, turned, false, style)
                                          : in_style(turned, written, true, style);
}

} // namespace thawslip::kitchen
