#include "kitchen/measures/units.h"

#include <cassert>
#include <cstdint>
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

/// The parts of a gallon of `millilitres`, which both the US and the imperial one divide alike
/// down to the pint.
std::optional<Amount> part_of_gallon(Unit unit, Amount gallon) {
    std::int64_t parts = 0;
    if (unit == Unit::Gallon) {
        parts = 1;
    } else if (unit == Unit::Quart) {
        parts = 4;
    } else if (unit == Unit::Pint) {
        parts = 8;
    } else {
        return std::nullopt;
    }
    return in_lowest_terms({gallon.numerator, gallon.denominator * parts});
}

Amount us_measure(Unit unit) {
    constexpr Amount gallon{473'176'473, 125'000}; // 231 in³ of 16.387064 ml
    if (const auto part = part_of_gallon(unit, gallon)) {
        return *part;
    }
    const auto parts_in_gallon = unit == Unit::Cup          ? 16
                                 : unit == Unit::FluidOunce ? 128
                                 : unit == Unit::Tablespoon ? 256
                                                            : 768;
    return in_lowest_terms({gallon.numerator, gallon.denominator * parts_in_gallon});
}

Amount other_measure(Unit unit, Measures measures) {
    constexpr Amount imperial_gallon{454'609, 100};
    if (const auto part = part_of_gallon(unit, imperial_gallon)) {
        return *part;
    }
    if (unit == Unit::FluidOunce) {
        return {454'609, 16'000};
    }
    if (unit == Unit::Cup) {
        return measures == Measures::Imperial ? Amount{454'609, 1'600} : Amount{250, 1};
    }
    if (unit == Unit::Tablespoon) {
        return {measures == Measures::Australian ? 20 : 15, 1};
    }
    return {5, 1};
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
    switch (unit) {
    case Unit::Count: return Dimension::Count;
    case Unit::Milligram:
    case Unit::Gram:
    case Unit::Kilogram:
    case Unit::Ounce:
    case Unit::Pound: return Dimension::Mass;
    case Unit::Millilitre:
    case Unit::Centilitre:
    case Unit::Decilitre:
    case Unit::Litre:
    case Unit::Teaspoon:
    case Unit::Tablespoon:
    case Unit::FluidOunce:
    case Unit::Cup:
    case Unit::Pint:
    case Unit::Quart:
    case Unit::Gallon: return Dimension::Volume;
    }
    return Dimension::Count;
}

bool is_metric(Unit unit) {
    switch (unit) {
    case Unit::Milligram:
    case Unit::Gram:
    case Unit::Kilogram:
    case Unit::Millilitre:
    case Unit::Centilitre:
    case Unit::Decilitre:
    case Unit::Litre: return true;
    case Unit::Count:
    case Unit::Ounce:
    case Unit::Pound:
    case Unit::Teaspoon:
    case Unit::Tablespoon:
    case Unit::FluidOunce:
    case Unit::Cup:
    case Unit::Pint:
    case Unit::Quart:
    case Unit::Gallon: return false;
    }
    return false;
}

Amount factor(Unit unit, Measures measures) {
    switch (unit) {
    case Unit::Count:
    case Unit::Gram:
    case Unit::Millilitre: return {1, 1};
    case Unit::Milligram: return {1, 1000};
    case Unit::Kilogram:
    case Unit::Litre: return {1000, 1};
    case Unit::Centilitre: return {10, 1};
    case Unit::Decilitre: return {100, 1};
    case Unit::Ounce: return {45'359'237, 1'600'000};
    case Unit::Pound: return {45'359'237, 100'000};
    case Unit::Teaspoon:
    case Unit::Tablespoon:
    case Unit::FluidOunce:
    case Unit::Cup:
    case Unit::Pint:
    case Unit::Quart:
    case Unit::Gallon:
        return measures == Measures::Us ? us_measure(unit) : other_measure(unit, measures);
    }
    return {1, 1};
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
