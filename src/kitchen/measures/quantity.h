#pragma once

#include "base/result.h"
#include "kitchen/measures/text_fault.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace thawslip::kitchen {

/// An exact number of kitchen size: 1/3 cup stays a third. Always in lowest terms, denominator > 0.
struct Amount {
    std::int64_t numerator = 0;
    std::int64_t denominator = 1;

    double value() const {
        return static_cast<double>(numerator) / static_cast<double>(denominator);
    }
    friend bool operator==(const Amount&, const Amount&) = default;
};

/// `Cup` alone is what the cook's own country calls a cup; the settings say which that is.
enum class Unit {
    Count, ///< a number of things: "3 onions"
    Milligram,
    Gram,
    Kilogram,
    Ounce,
    Pound,
    Millilitre,
    Centilitre,
    Decilitre,
    Litre,
    Teaspoon,
    Tablespoon,
    FluidOunce,
    Cup,
    Pint,
    Quart,
    Gallon,
};

/// An amount of something to eat: "2 heaping tbsp capers", "3–4 onions", "salt to taste".
struct Quantity {
    std::optional<Amount> low;  ///< nothing for "to taste" and the like
    std::optional<Amount> high; ///< equal to `low` unless a range was written
    Unit unit = Unit::Count;
    std::string qualifier;  ///< "heaping", "level", "scant", "about", "to taste"; else empty
    std::string item;       ///< "capers"; empty where none is written
    std::string as_written; ///< the whole text, for printing in the cook's own words
    friend bool operator==(const Quantity&, const Quantity&) = default;
};

/// Reads a quantity as cooks write one: "2.2 kg", "1 l vegetable stock", "½ cup", "1 1/2 tsp",
/// "2 heaping tbsp", "3–4 onions", "4 lb 14 oz beef", "salt to taste"; "2 x 400 g tins tomatoes"
/// is a count of 2 whose item is "400 g tins tomatoes". Numbers in words count as well, "two
/// onions" (number_words.h). A comma may stand for the decimal point. A text that begins with no
/// number ("5-spice powder", "100% rye flour" among them) is an item without an amount. Refused:
/// amounts of nothing or below it, ranges that run backwards, two amounts in a row, and numbers
/// that could be read in two ways.
Result<Quantity, TextFault> parse_quantity(std::string_view text);

/// The cook's own words, else the item alone, as for a sum of several.
std::string text_of(const Quantity& quantity);

/// The abbreviation cooks print: "kg", "tbsp", "cup"; empty for Count.
std::string_view symbol(Unit unit);

} // namespace thawslip::kitchen
