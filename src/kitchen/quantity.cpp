#include "kitchen/quantity.h"

#include "kitchen/number_text.h"
#include "kitchen/text.h"

#include <algorithm>
#include <array>

namespace thawslip::kitchen {
namespace {

struct UnitWord {
    std::string_view word;
    Unit unit;
};

/// How cooks write units, in lower case; without a full stop at the end.
/// Spellings: NIST, Cooking Measurement Equivalencies, and common practice, no source.
constexpr auto unit_words = std::to_array<UnitWord>({
    {"mg", Unit::Milligram},
    {"milligram", Unit::Milligram},
    {"milligrams", Unit::Milligram},
    {"g", Unit::Gram},
    {"gram", Unit::Gram},
    {"grams", Unit::Gram},
    {"kg", Unit::Kilogram},
    {"kilo", Unit::Kilogram},
    {"kilos", Unit::Kilogram},
    {"kilogram", Unit::Kilogram},
    {"kilograms", Unit::Kilogram},
    {"kgs", Unit::Kilogram},
    {"oz", Unit::Ounce},
    {"ounce", Unit::Ounce},
    {"ounces", Unit::Ounce},
    {"lb", Unit::Pound},
    {"lbs", Unit::Pound},
    {"pound", Unit::Pound},
    {"pounds", Unit::Pound},
    {"ml", Unit::Millilitre},
    {"millilitre", Unit::Millilitre},
    {"millilitres", Unit::Millilitre},
    {"milliliter", Unit::Millilitre},
    {"milliliters", Unit::Millilitre},
    {"cl", Unit::Centilitre},
    {"centilitre", Unit::Centilitre},
    {"centilitres", Unit::Centilitre},
    {"centiliter", Unit::Centilitre},
    {"centiliters", Unit::Centilitre},
    {"dl", Unit::Decilitre},
    {"decilitre", Unit::Decilitre},
    {"decilitres", Unit::Decilitre},
    {"deciliter", Unit::Decilitre},
    {"deciliters", Unit::Decilitre},
    {"l", Unit::Litre},
    {"litre", Unit::Litre},
    {"litres", Unit::Litre},
    {"liter", Unit::Litre},
    {"liters", Unit::Litre},
    {"tsp", Unit::Teaspoon},
    {"tsps", Unit::Teaspoon},
    {"teaspoon", Unit::Teaspoon},
    {"teaspoons", Unit::Teaspoon},
    {"tbsp", Unit::Tablespoon},
    {"tbs", Unit::Tablespoon},
    {"tbsps", Unit::Tablespoon},
    {"tablespoon", Unit::Tablespoon},
    {"tablespoons", Unit::Tablespoon},
    {"cup", Unit::Cup},
    {"cups", Unit::Cup},
    {"pt", Unit::Pint},
    {"pint", Unit::Pint},
    {"pints", Unit::Pint},
    {"qt", Unit::Quart},
    {"quart", Unit::Quart},
    {"quarts", Unit::Quart},
    {"gal", Unit::Gallon},
    {"gallon", Unit::Gallon},
    {"gallons", Unit::Gallon},
    {"floz", Unit::FluidOunce},
});

/// How full a spoon is, or how exact a number; before the unit or before the number.
constexpr std::array<std::string_view, 8> qualifier_words = {
    "heaping", "heaped", "level", "rounded", "scant", "generous", "about", "approximately"};

/// Amounts without a number; after the item, or before it.
constexpr std::array<std::string_view, 11> vague_words = {
    "to taste",     "as needed",   "a pinch of", "a dash of", "a handful of", "a knob of",
    "a drizzle of", "a splash of", "a little",   "a few",     "some"};

/// The word at `at`, up to the next space, without a full stop or a comma at its end.
std::string_view word_at(std::string_view text, std::size_t at) {
    auto word = text.substr(std::min(at, text.size()));
    word = word.substr(0, std::min(word.find(' '), word.size()));
    return word.ends_with('.') || word.ends_with(',') ? word.substr(0, word.size() - 1) : word;
}

std::size_t past_word(std::string_view text, std::size_t at) {
    const auto space = text.find(' ', at);
    return skip_spaces(text, space == std::string_view::npos ? text.size() : space);
}

/// A cursor over the text, and the quantity read so far.
struct Reading {
    std::string_view text;
    std::size_t at = 0;
    Quantity quantity;

    void qualifier() {
        const auto word = lower(word_at(text, at));
        if (std::ranges::find(qualifier_words, word) != qualifier_words.end()) {
            quantity.qualifier += (quantity.qualifier.empty() ? "" : " ") + word;
            at = past_word(text, at);
        }
    }

    /// "fl oz" is two words; every other unit is one. "l" and "L" are both litres.
    void unit() {
        const auto word = lower(word_at(text, at));
        const auto next = lower(word_at(text, past_word(text, at)));
        const bool ounces = next == "oz" || next == "ounce" || next == "ounces";
        if ((word == "fl" || word == "fluid") && ounces) {
            quantity.unit = Unit::FluidOunce;
            at = past_word(text, past_word(text, at));
            return;
        }
        const auto found = std::ranges::find(unit_words, std::string_view{word}, &UnitWord::word);
        if (found != unit_words.end()) {
            quantity.unit = found->unit;
            at = past_word(text, at);
        }
    }

    /// "2 x 400 g tins": the sign goes, what is counted stays the item.
    void times_sign() {
        const auto word = lower(word_at(text, at));
        if (quantity.low && quantity.unit == Unit::Count && (word == "x" || word == "×")) {
            at = past_word(text, at);
        }
    }

    void item() {
        auto rest = text.substr(std::min(at, text.size()));
        if (lower(rest).starts_with("of ")) {
            rest.remove_prefix(3);
        }
        quantity.item = rest;
    }
};

/// "salt to taste", "a pinch of nutmeg": an item without a number.
std::optional<Quantity> read_vague(std::string_view text) {
    const auto words = lower(text);
    for (const auto vague : vague_words) {
        const bool before = words == vague || words.starts_with(std::string{vague} + " ");
        if (!before && !words.ends_with(" " + std::string{vague})) {
            continue;
        }
        Quantity quantity;
        quantity.qualifier = vague;
        auto item = before ? text.substr(vague.size()) : text.substr(0, text.size() - vague.size());
        while (item.starts_with(' ')) {
            item.remove_prefix(1);
        }
        while (item.ends_with(' ') || item.ends_with(',')) {
            item.remove_suffix(1);
        }
        quantity.item = item;
        quantity.as_written = text;
        return quantity;
    }
    return std::nullopt;
}

/// "-2 g": a minus sign before a number.
bool is_negative(std::string_view text, std::size_t at) {
    const auto rest = text.substr(at);
    const std::size_t sign = rest.starts_with("-") ? 1 : rest.starts_with("−") ? 3 : 0;
    return sign > 0 && read_amount(text, at + sign).ok();
}

bool is_unit(std::string_view text) {
    const auto word = lower(word_at(text, 0));
    return past_word(text, 0) == text.size() &&
           std::ranges::find(unit_words, std::string_view{word}, &UnitWord::word) !=
               unit_words.end();
}

/// What keeps the text from being a quantity, once the numbers that stand in it are read.
std::optional<TextFault> refuse(const Reading& reading, const Result<ReadRange, TextFault>& range) {
    if (is_negative(reading.text, reading.at)) {
        return TextFault{reading.at, "an amount is above 0"};
    }
    if (!range) {
        if (!range.fault().message.empty()) {
            return range.fault();
        }
        return is_unit(reading.text.substr(reading.at))
                   ? std::optional{TextFault{reading.at, "expected a number before the unit"}}
                   : std::nullopt;
    }
    const auto& [low, high, end] = range.value();
    if (low.numerator == 0) {
        return TextFault{reading.at, "an amount is above 0"};
    }
    if (low.value() > high.value()) {
        return TextFault{reading.at, "the smaller amount comes first"};
    }
    return std::nullopt;
}

} // namespace

Result<Quantity, TextFault> parse_quantity(std::string_view text) {
    if (skip_spaces(text, 0) == text.size()) {
        return Failure{TextFault{0, "expected an amount such as \"200 g baby spinach\""}};
    }
    if (auto vague = read_vague(text)) {
        return std::move(*vague);
    }
    Reading reading{text, skip_spaces(text, 0), {}};
    reading.quantity.as_written = text;
    reading.qualifier();
    const auto range = read_range(text, reading.at);
    if (auto fault = refuse(reading, range)) {
        return Failure{std::move(*fault)};
    }
    if (range) {
        reading.quantity.low = range.value().low;
        reading.quantity.high = range.value().high;
        reading.at = skip_spaces(text, range.value().end);
        reading.qualifier();
        reading.unit();
        reading.times_sign();
    }
    reading.item();
    return std::move(reading.quantity);
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
