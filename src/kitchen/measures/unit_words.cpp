#include "kitchen/measures/unit_words.h"

#include "kitchen/texts/text.h"

#include <algorithm>
#include <array>

namespace thawslip::kitchen {
namespace {

struct UnitWord {
    std::string_view word;
    Unit unit;
};

/// In small letters and the singular. Names, and mL, L, g, kg: NIST, Cooking Measurement
/// Equivalencies; the other abbreviations and the British spellings: common practice, no source.
constexpr std::array<UnitWord, 35> unit_words = {{{"mg", Unit::Milligram},
                                                  {"milligram", Unit::Milligram},
                                                  {"g", Unit::Gram},
                                                  {"gram", Unit::Gram},
                                                  {"kg", Unit::Kilogram},
                                                  {"kilo", Unit::Kilogram},
                                                  {"kilogram", Unit::Kilogram},
                                                  {"oz", Unit::Ounce},
                                                  {"ounce", Unit::Ounce},
                                                  {"lb", Unit::Pound},
                                                  {"pound", Unit::Pound},
                                                  {"ml", Unit::Millilitre},
                                                  {"millilitre", Unit::Millilitre},
                                                  {"milliliter", Unit::Millilitre},
                                                  {"cl", Unit::Centilitre},
                                                  {"centilitre", Unit::Centilitre},
                                                  {"centiliter", Unit::Centilitre},
                                                  {"dl", Unit::Decilitre},
                                                  {"decilitre", Unit::Decilitre},
                                                  {"deciliter", Unit::Decilitre},
                                                  {"l", Unit::Litre},
                                                  {"litre", Unit::Litre},
                                                  {"liter", Unit::Litre},
                                                  {"tsp", Unit::Teaspoon},
                                                  {"teaspoon", Unit::Teaspoon},
                                                  {"tbsp", Unit::Tablespoon},
                                                  {"tbs", Unit::Tablespoon},
                                                  {"tablespoon", Unit::Tablespoon},
                                                  {"cup", Unit::Cup},
                                                  {"pt", Unit::Pint},
                                                  {"pint", Unit::Pint},
                                                  {"qt", Unit::Quart},
                                                  {"quart", Unit::Quart},
                                                  {"gal", Unit::Gallon},
                                                  {"gallon", Unit::Gallon}}};

std::optional<Unit> listed(std::string_view word) {
    const auto* found = std::ranges::find(unit_words, word, &UnitWord::word);
    return found == unit_words.end() ? std::nullopt : std::optional{found->unit};
}

} // namespace

std::optional<Unit> unit_named(std::string_view word) {
    const auto small = lower(word);
    const std::string_view letters = small;
    if (const auto unit = listed(letters)) {
        return unit;
    }
    const bool may_be_plural = letters.size() > 2 && letters.ends_with('s');
    return may_be_plural ? listed(letters.substr(0, letters.size() - 1)) : std::nullopt;
}

std::string_view symbol(Unit unit) {
    switch (unit) {
    case Unit::Count: return "";
    case Unit::Milligram: return "mg";
    case Unit::Gram: return "g";
    case Unit::Kilogram: return "kg";
    case Unit::Ounce: return "oz";
    case Unit::Pound: return "lb";
    case Unit::Millilitre: return "ml";
    case Unit::Centilitre: return "cl";
    case Unit::Decilitre: return "dl";
    case Unit::Litre: return "l";
    case Unit::Teaspoon: return "tsp";
    case Unit::Tablespoon: return "tbsp";
    case Unit::FluidOunce: return "fl oz";
    case Unit::Cup: return "cup";
    case Unit::Pint: return "pt";
    case Unit::Quart: return "qt";
    case Unit::Gallon: return "gal";
    }
    return "";
}

} // namespace thawslip::kitchen
