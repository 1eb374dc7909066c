#include "kitchen/measures/unit_words.h"

#include "base/letters.h"
#include "base/named.h"

namespace thawslip::kitchen {
namespace {

/// In small letters and the singular. Names, and mL, L, g, kg: NIST, Cooking Measurement
/// Equivalencies; the other abbreviations and the British spellings: common practice, no source.
constexpr Named<Unit> unit_words[] = {
    {Unit::Milligram, "mg"},
    {Unit::Milligram, "milligram"},
    {Unit::Gram, "g"},
    {Unit::Gram, "gram"},
    {Unit::Kilogram, "kg"},
    {Unit::Kilogram, "kilo"},
    {Unit::Kilogram, "kilogram"},
    {Unit::Ounce, "oz"},
    {Unit::Ounce, "ounce"},
    {Unit::Pound, "lb"},
    {Unit::Pound, "pound"},
    {Unit::Millilitre, "ml"},
    {Unit::Millilitre, "millilitre"},
    {Unit::Millilitre, "milliliter"},
    {Unit::Centilitre, "cl"},
    {Unit::Centilitre, "centilitre"},
    {Unit::Centilitre, "centiliter"},
    {Unit::Decilitre, "dl"},
    {Unit::Decilitre, "decilitre"},
    {Unit::Decilitre, "deciliter"},
    {Unit::Litre, "l"},
    {Unit::Litre, "litre"},
    {Unit::Litre, "liter"},
    {Unit::Teaspoon, "tsp"},
    {Unit::Teaspoon, "teaspoon"},
    {Unit::Tablespoon, "tbsp"},
    {Unit::Tablespoon, "tbs"},
    {Unit::Tablespoon, "tablespoon"},
    {Unit::Cup, "cup"},
    {Unit::Pint, "pt"},
    {Unit::Pint, "pint"},
    {Unit::Quart, "qt"},
    {Unit::Quart, "quart"},
    {Unit::Gallon, "gal"},
    {Unit::Gallon, "gallon"},
};

} // namespace

std::optional<Unit> unit_named(std::string_view word) {
    const auto small = lower(word);
    const std::string_view letters = small;
    if (const auto unit = value_in(unit_words, letters)) {
        return unit;
    }
    const bool may_be_plural = letters.size() > 2 && letters.ends_with('s');
    return may_be_plural ? value_in(unit_words, letters.substr(0, letters.size() - 1))
                         : std::nullopt;
}

std::string_view symbol(Unit unit) {
    return unit == Unit::FluidOunce ? "fl oz" : name_in(unit_words, unit);
}

} // namespace thawslip::kitchen
