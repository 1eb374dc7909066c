#include "kitchen/measures/units.h"

#include <algorithm>
#include <cassert>
#include <cstdint>
#include <iterator>
#include <limits>
#include <numeric>

namespace thawslip::kitchen {
namespace {

std::optional<std::int64_t> product(std::int64_t a, std::int64_t b) {
    std::int64_t result = 0;
    if (__builtin_mul_overflow(a, b, &result)) {
        return std::nullopt;
    }
    return result;
}

/// Grams or millilitres, in each kitchen's drawer.
struct Factors {
    Amount us;
    Amount metric;
    Amount australian;
    Amount imperial;
};

constexpr Factors everywhere(Amount amount) {
    return {amount, amount, amount, amount};
}

/// A part of a gallon: of 231 in³ of 16.387064 ml in the US, of 4.54609 l elsewhere.
constexpr Factors part_of_gallon(std::int64_t parts) {
    constexpr std::int64_t us_denominator = 125'000;
    constexpr std::int64_t denominator = 100;
    const Amount imperial{454'609, denominator * parts};
    return {{473'176'473, us_denominator * parts}, imperial, imperial, imperial};
}

constexpr Factors fluid_ounce{part_of_gallon(128).us, part_of_gallon(160).metric,
                              part_of_gallon(160).australian, part_of_gallon(160).imperial};

struct UnitRow {
    Unit unit;
    Dimension dimension;
    bool is_metric;
    Factors factors;
};

constexpr auto mass = Dimension::Mass;
constexpr auto volume = Dimension::Volume;

constexpr UnitRow units[] = {
    {Unit::Count, Dimension::Count, false, everywhere({1, 1})},
    {Unit::Milligram, mass, true, everywhere({1, 1000})},
    {Unit::Gram, mass, true, everywhere({1, 1})},
    {Unit::Kilogram, mass, true, everywhere({1000, 1})},
    {Unit::Ounce, mass, false, everywhere({45'359'237, 1'600'000})},
    {Unit::Pound, mass, false, everywhere({45'359'237, 100'000})},
    {Unit::Millilitre, volume, true, everywhere({1, 1})},
    {Unit::Centilitre, volume, true, everywhere({10, 1})},
    {Unit::Decilitre, volume, true, everywhere({100, 1})},
    {Unit::Litre, volume, true, everywhere({1000, 1})},
    {Unit::Teaspoon, volume, false, {{157'725'491, 32'000'000}, {5, 1}, {5, 1}, {5, 1}}},
    {Unit::Tablespoon, volume, false, {part_of_gallon(256).us, {15, 1}, {20, 1}, {15, 1}}},
    {Unit::FluidOunce, volume, false, fluid_ounce},
    {Unit::Cup, volume, false, {part_of_gallon(16).us, {250, 1}, {250, 1}, {454'609, 1'600}}},
    {Unit::Pint, volume, false, part_of_gallon(8)},
    {Unit::Quart, volume, false, part_of_gallon(4)},
    {Unit::Gallon, volume, false, part_of_gallon(1)},
};

const UnitRow& row_of(Unit unit) {
    const auto* found = std::ranges::find(units, unit, &UnitRow::unit);
    assert(found != std::end(units) && "a unit without a row");
    return *found;
}

} // namespace

Amount in_lowest_terms(Amount amount) {
    assert(amount.denominator > 0);
    const auto common = std::gcd(amount.numerator, amount.denominator);
    return {amount.numerator / common, amount.denominator / common};
}

std::optional<Amount> multiply(Amount a, Amount b) {
    // The smallest number of 64 bits has no positive twin, which gcd needs.
    constexpr auto no_twin = std::numeric_limits<std::int64_t>::min();
    if (a.numerator == no_twin || b.numerator == no_twin) {
        return std::nullopt;
    }
    const auto left = in_lowest_terms({a.numerator, b.denominator});
    const auto right = in_lowest_terms({b.numerator, a.denominator});
    const auto numerator = product(left.numerator, right.numerator);
    const auto denominator = product(left.denominator, right.denominator);
    if (!numerator || !denominator) {
        return std::nullopt;
    }
    return Amount{*numerator, *denominator};
}

Dimension dimension(Unit unit) {
    return row_of(unit).dimension;
}

bool is_metric(Unit unit) {
    return row_of(unit).is_metric;
}

Amount factor(Unit unit, Measures measures) {
    const auto& factors = row_of(unit).factors;
    switch (measures) {
    case Measures::Us: return factors.us;
    case Measures::Metric: return factors.metric;
    case Measures::Australian: return factors.australian;
    case Measures::Imperial: break;
    }
    return factors.imperial;
}

std::optional<Amount> convert(Amount amount, Unit from, Unit to, Measures measures) {
    if (dimension(from) != dimension(to)) {
        return std::nullopt;
    }
    const auto into = factor(to, measures);
    const auto ratio = multiply(factor(from, measures), {into.denominator, into.numerator});
    return ratio ? multiply(amount, *ratio) : std::nullopt;
}

} // namespace thawslip::kitchen
