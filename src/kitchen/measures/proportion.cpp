#include "kitchen/measures/proportion.h"

#include "kitchen/measures/number_text.h"
#include "kitchen/measures/unit_text.h"
#include "kitchen/measures/units.h"

#include <array>
#include <cmath>

namespace thawslip::kitchen {
namespace {

/// Above how much of a small metric unit it is rounded to what. Common practice, no source.
struct Rounding {
    double above = 0;
    std::int64_t step = 1;
};
constexpr std::array<Rounding, 4> metric = {{{1000, 50}, {200, 10}, {50, 5}, {10, 1}}};
constexpr Rounding by_the_jug = {25, 5}; // of litres: no jug shows 38 ml

/// What a spoon, a cup or a knife parts: the first of these that comes within a twentieth.
constexpr std::array<std::int64_t, 5> parts = {1, 2, 4, 3, 8};

Amount product(Amount a, Amount b) {
    return in_lowest_terms({a.numerator * b.numerator, a.denominator * b.denominator});
}

Amount multiple(double value, std::int64_t step) {
    return {std::llround(value / static_cast<double>(step)) * step, 1};
}

Amount nearest_of(double value, std::int64_t denominator) {
    const auto count = std::llround(value * static_cast<double>(denominator));
    return in_lowest_terms({std::max<std::int64_t>(count, 1), denominator});
}

std::optional<Amount> rounded_metric(double value, Unit unit) {
    for (const auto& [above, step] : metric) {
        if (value > above) {
            const bool is_poured = dimension(unit) == Dimension::Volume;
            return multiple(value, is_poured && value > by_the_jug.above
                                       ? std::max(step, by_the_jug.step)
                                       : step);
        }
    }
    if (unit != Unit::Gram && unit != Unit::Millilitre) {
        return std::nullopt;
    }
    constexpr double least_half = 2;
    return nearest_of(value, value < least_half ? 10 : 2); // no scale shows 0.875 g
}

Amount in_parts(double value) {
    constexpr double near_enough = 0.05;
    for (const auto denominator : parts) {
        const auto amount = nearest_of(value, denominator);
        if (std::abs(amount.value() - value) <= near_enough * value) {
            return amount;
        }
    }
    return nearest_of(value, parts.back());
}

Amount rounded(Amount amount, Unit unit) {
    const auto round = is_metric(unit) ? rounded_metric(amount.value(), unit) : std::nullopt;
    return round ? *round : in_parts(amount.value());
}

/// A third of a litre is poured by the millilitre, a sixth of a cup taken with a tablespoon, a
/// quarter of that with a teaspoon.
struct Step {
    Unit unit;
    double least;
    Unit smaller;
};
constexpr std::array<Step, 7> steps = {{{Unit::Litre, 1, Unit::Millilitre},
                                        {Unit::Decilitre, 1, Unit::Millilitre},
                                        {Unit::Centilitre, 1, Unit::Millilitre},
                                        {Unit::Kilogram, 1, Unit::Gram},
                                        {Unit::Pound, 0.25, Unit::Ounce},
                                        {Unit::Cup, 0.24, Unit::Tablespoon},
                                        {Unit::Tablespoon, 0.5, Unit::Teaspoon}}};

/// In which unit an amount is measured, the smaller of a range being `least`.
Unit measured_in(Unit unit, Amount least) {
    for (const auto& step : steps) {
        if (step.unit == unit && least.value() < step.least) {
            least = convert(least, unit, step.smaller, Measures::Us).value_or(least);
            unit = step.smaller;
        }
    }
    return unit;
}

} // namespace

Quantity in_proportion(const Quantity& quantity, Amount factor) {
    if (!quantity.low || factor == Amount{1, 1}) {
        return quantity;
    }
    auto scaled = quantity;
    const auto low = product(*quantity.low, factor);
    const auto high = product(quantity.high.value_or(*quantity.low), factor);
    const bool whole = factor.denominator == 1; // bags: as exact as what was written
    scaled.unit = whole ? quantity.unit : measured_in(quantity.unit, low);
    const auto in_unit = [&](Amount amount) {
        const auto converted = convert(amount, quantity.unit, scaled.unit, Measures::Us);
        return whole ? amount : rounded(converted.value_or(amount), scaled.unit);
    };
    scaled.low = in_unit(low);
    scaled.high = in_unit(high);
    scaled.as_written.clear();
    scaled.as_written = to_text(scaled, UnitStyle{Units::Written, Measures::Us});
    return scaled;
}

} // namespace thawslip::kitchen
