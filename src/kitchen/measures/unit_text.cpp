#include "kitchen/measures/unit_text.h"

#include "kitchen/measures/number_words.h"
#include "kitchen/measures/units.h"
#include "kitchen/texts/text.h"

#include <cmath>
#include <fmt/format.h>
#include <optional>
#include <span>
#include <string_view>

namespace thawslip::kitchen {
namespace {

constexpr double tolerance = 0.025;

/// The multiple of `step` that lies nearest; at least one step.
Amount nearest_multiple(double value, Amount step) {
    const auto count = std::max<std::int64_t>(std::llround(value / step.value()), 1);
    return in_lowest_terms({count * step.numerator, step.denominator});
}

bool is_close(Amount rounded, double exact) {
    return std::abs(rounded.value() - exact) <= tolerance * exact;
}

/// The multiple of the first, coarsest step that comes close; else the nearest of any.
Amount roundest(double value, std::span<const Amount> steps) {
    auto nearest = nearest_multiple(value, steps.front());
    for (const auto& step : steps) {
        const auto rounded = nearest_multiple(value, step);
        if (is_close(rounded, value)) {
            return rounded;
        }
        if (std::abs(rounded.value() - value) < std::abs(nearest.value() - value)) {
            nearest = rounded;
        }
    }
    return nearest;
}

// A scale shows 225 g, a measuring jug 180 ml but hardly 175.
constexpr Amount gram_steps[] = {{1000, 1}, {500, 1}, {250, 1}, {100, 1}, {50, 1},
                                 {25, 1},   {10, 1},  {5, 1},   {1, 1}};
constexpr Amount millilitre_steps[] = {{1000, 1}, {500, 1}, {250, 1}, {100, 1},
                                       {50, 1},   {10, 1},  {5, 1},   {1, 1}};
constexpr Amount cup_steps[] = {{1, 1}, {1, 2}, {1, 4}, {1, 3}};
constexpr Amount quarter_steps[] = {{1, 1}, {1, 2}, {1, 4}};
constexpr Amount half_steps[] = {{1, 1}, {1, 2}};
constexpr Amount eighth_steps[] = {{1, 1}, {1, 2}, {1, 4}, {1, 8}};

std::vector<Measure> metric_from(double base, Unit small, Unit large) {
    const auto rounded =
        small == Unit::Gram ? roundest(base, gram_steps) : roundest(base, millilitre_steps);
    if (rounded.numerator < 1000 * rounded.denominator) {
        return {{rounded, small}};
    }
    return {{in_lowest_terms({rounded.numerator, rounded.denominator * 1000}), large}};
}

/// As much of a volume as a large measure shows, filled up with small ones, for there is no measure
/// of an eighth: 2 cups 2 tbsp. Whole small ones where they come close, else the nearest half.
std::vector<Measure> filled_up(double millilitres, Measure large, Unit small, Measures measures) {
    const double spoon = factor(small, measures).value();
    const double rest = millilitres - large.amount.value() * factor(large.unit, measures).value();
    const auto whole = nearest_multiple(rest / spoon, {1, 1});
    const bool is_enough = std::abs(whole.value() * spoon - rest) <= tolerance * millilitres;
    const Measure filling{is_enough ? whole : nearest_multiple(rest / spoon, {1, 2}), small};
    return large.amount.numerator == 0 ? std::vector{filling} : std::vector{large, filling};
}

std::vector<Measure> imperial_volume(double millilitres) {
    constexpr double ounces_in_pint = 20;
    const double ounces = millilitres / factor(Unit::FluidOunce, Measures::Imperial).value();
    if (ounces < ounces_in_pint / 2) {
        return {{roundest(ounces, half_steps), Unit::FluidOunce}};
    }
    const double pints = ounces / ounces_in_pint;
    const auto rounded = roundest(pints, quarter_steps);
    if (is_close(rounded, pints)) {
        return {{rounded, Unit::Pint}};
    }
    const Measure whole{{static_cast<std::int64_t>(pints), 1}, Unit::Pint};
    return filled_up(millilitres, whole, Unit::FluidOunce, Measures::Imperial);
}

/// In spoons and cups, and above 16 US cups in quarts.
std::vector<Measure> volume_in_cups(double millilitres, Measures measures) {
    const auto count = [&](Unit unit) { return millilitres / factor(unit, measures).value(); };
    const double cups = count(Unit::Cup);
    if (count(Unit::Tablespoon) < 0.95) {
        return {{roundest(count(Unit::Teaspoon), eighth_steps), Unit::Teaspoon}};
    }
    if (cups < 0.245) {
        return {{roundest(count(Unit::Tablespoon), half_steps), Unit::Tablespoon}};
    }
    if (measures == Measures::Us && cups >= 16) {
        return {{roundest(count(Unit::Quart), quarter_steps), Unit::Quart}};
    }
    const auto rounded = roundest(cups, cup_steps);
    if (is_close(rounded, cups)) {
        return {{rounded, Unit::Cup}};
    }
    if (cups < 0.62) { // ten tablespoons
        return {{roundest(count(Unit::Tablespoon), half_steps), Unit::Tablespoon}};
    }
    const auto quarters = static_cast<std::int64_t>(4 * cups);
    return filled_up(millilitres, {in_lowest_terms({quarters, 4}), Unit::Cup}, Unit::Tablespoon,
                     measures);
}

std::vector<Measure> pounds_and_ounces(double grams) {
    constexpr double least_grams = 7.0; // a quarter of an ounce
    constexpr std::int64_t ounces_in_pound = 16;
    if (grams < least_grams) {
        return {};
    }
    const double ounces = grams / factor(Unit::Ounce, Measures::Us).value();
    const auto rounded = roundest(ounces, eighth_steps);
    if (rounded.value() < ounces_in_pound) {
        return {{rounded, Unit::Ounce}};
    }
    const auto whole = std::llround(ounces);
    std::vector<Measure> parts{{{whole / ounces_in_pound, 1}, Unit::Pound}};
    if (whole % ounces_in_pound != 0) {
        parts.push_back({{whole % ounces_in_pound, 1}, Unit::Ounce});
    }
    return parts;
}

std::string_view vulgar_fraction(std::int64_t numerator, std::int64_t denominator) {
    struct Fraction {
        std::int64_t numerator;
        std::int64_t denominator;
        std::string_view text;
    };
    static constexpr Fraction fractions[] = {
        {1, 8, "⅛"}, {1, 4, "¼"}, {1, 3, "⅓"}, {3, 8, "⅜"}, {1, 2, "½"},
        {5, 8, "⅝"}, {2, 3, "⅔"}, {3, 4, "¾"}, {7, 8, "⅞"},
    };
    for (const auto& one : fractions) {
        if (one.numerator == numerator && one.denominator == denominator) {
            return one.text;
        }
    }
    return {};
}

std::string number(Amount amount, Unit unit, char mark) {
    const auto whole = amount.numerator / amount.denominator;
    const auto rest = amount.numerator % amount.denominator;
    if (rest == 0) {
        return std::to_string(whole);
    }
    const auto fraction = vulgar_fraction(rest, amount.denominator);
    if (is_metric(unit) || fraction.empty()) {
        return decimal(amount.value(), 3, mark);
    }
    return (whole == 0 ? std::string{} : std::to_string(whole)) + std::string{fraction};
}

/// The unit's name in the style's language, else its symbol; a cup, which has none, takes an s
/// after more than one.
std::string unit_word(Amount amount, Unit unit, const UnitStyle& style) {
    const bool several = amount.numerator > amount.denominator;
    const auto named = style.names.find(unit);
    if (named != style.names.end()) {
        return several ? named->second.several : named->second.one;
    }
    return std::string{symbol(unit)} + (unit == Unit::Cup && several ? "s" : "");
}

double base_amount(Measure measure, Measures measures) {
    return measure.amount.value() * factor(measure.unit, measures).value();
}

} // namespace

std::vector<Measure> in_other_system(Measure measure, Measures measures) {
    if (measure.amount.numerator <= 0 || measure.unit == Unit::Teaspoon ||
        measure.unit == Unit::Tablespoon) {
        return {};
    }
    constexpr double most = 1e9; // a million litres: beyond kitchens, within a whole number
    const double base = base_amount(measure, measures);
    if (base > most) {
        return {};
    }
    switch (dimension(measure.unit)) {
    case Dimension::Count: return {};
    case Dimension::Mass:
        return is_metric(measure.unit) ? pounds_and_ounces(base)
                                       : metric_from(base, Unit::Gram, Unit::Kilogram);
    case Dimension::Volume:
        if (!is_metric(measure.unit)) {
            return metric_from(base, Unit::Millilitre, Unit::Litre);
        }
        return measures == Measures::Imperial ? imperial_volume(base)
                                              : volume_in_cups(base, measures);
    }
    return {};
}

std::string to_text(const std::vector<Measure>& measures, const UnitStyle& style) {
    std::string text;
    for (const auto& [amount, unit] : measures) {
        text += text.empty() ? "" : " ";
        text += number(amount, unit, style.decimal_mark);
        if (unit != Unit::Count) {
            text += " " + unit_word(amount, unit, style);
        }
    }
    return text;
}

namespace {

using Parts = std::vector<Measure>;

/// `2–3 cups` where both ends have one part of one unit; else both ends in full.
std::string range_text(const Parts& low, const Parts& high, const UnitStyle& style) {
    if (low == high) {
        return to_text(low, style);
    }
    if (low.size() == 1 && high.size() == 1 && low[0].unit == high[0].unit) {
        return number(low[0].amount, low[0].unit, style.decimal_mark) + "–" + to_text(high, style);
    }
    return to_text(low, style) + "–" + to_text(high, style);
}

/// What was written, in parts: 4⅞ lb, which is how "4 lb 14 oz" is kept, is that again.
Parts written_parts(Measure measure) {
    constexpr std::int64_t ounces_in_pound = 16;
    const auto& [amount, unit] = measure;
    const bool in_ounces = ounces_in_pound % amount.denominator == 0 && amount.denominator > 4;
    if (unit != Unit::Pound || !in_ounces) {
        return {measure};
    }
    const auto ounces = amount.numerator * (ounces_in_pound / amount.denominator);
    Parts parts;
    if (ounces >= ounces_in_pound) {
        parts.push_back({{ounces / ounces_in_pound, 1}, Unit::Pound});
    }
    parts.push_back({{ounces % ounces_in_pound, 1}, Unit::Ounce});
    return parts;
}

/// A sum of 1200 g is written 1.2 kg.
void to_larger_unit(Measure& low, Measure& high) {
    const bool is_small = low.unit == Unit::Gram || low.unit == Unit::Millilitre;
    if (is_small && low.amount.value() >= 1000) {
        for (auto* end : {&low, &high}) {
            end->unit = end->unit == Unit::Gram ? Unit::Kilogram : Unit::Litre;
            end->amount = in_lowest_terms({end->amount.numerator, end->amount.denominator * 1000});
        }
    }
}

/// Of "400 g tins tomatoes" one counts tins.
bool begins_with_figure(const std::string& item) {
    return !item.empty() && is_digit(item.front());
}

std::string qualified(const Quantity& quantity, const std::string& amount) {
    return quantity.qualifier.empty() ? amount : quantity.qualifier + " " + amount;
}

/// The cook's own words for the amount, which stand before the item: "about 1 l", "4 lb 14 oz".
/// Nothing where the item is not the end of what was written, or "of" joins them.
std::optional<std::string> amount_as_written(const Quantity& quantity) {
    const auto& written = quantity.as_written;
    if (written.size() <= quantity.item.size() || !written.ends_with(quantity.item)) {
        return std::nullopt;
    }
    auto amount = written.substr(0, written.size() - quantity.item.size());
    amount.erase(amount.find_last_not_of(' ') + 1);
    if (amount.ends_with(" x")) {
        amount.replace(amount.size() - 1, 1, "×");
    }
    return amount.empty() || amount.ends_with(" of") ? std::nullopt : std::optional{amount};
}

} // namespace

AmountAndItem amount_and_item(const Quantity& quantity, const UnitStyle& style) {
    return amount_and_item(quantity, quantity, style);
}

AmountAndItem amount_and_item(const Quantity& quantity, const Quantity& exact,
                              const UnitStyle& style) {
    if (!quantity.low || !exact.low) {
        return {"", text_of(quantity)};
    }
    Measure low{*quantity.low, quantity.unit};
    Measure high{quantity.high.value_or(*quantity.low), quantity.unit};
    if (quantity.as_written.empty()) {
        to_larger_unit(low, high);
    }
    const auto turned_low = in_other_system({*exact.low, exact.unit}, style.measures);
    const auto turned_high =
        in_other_system({exact.high.value_or(*exact.low), exact.unit}, style.measures);
    if (!turned_low.empty() && !turned_high.empty()) {
        const auto written = range_text(written_parts(low), written_parts(high), style);
        const auto turned = range_text(turned_low, turned_high, style);
        const auto amount = in_style(written, turned, is_metric(quantity.unit), style);
        return {qualified(quantity, amount), quantity.item};
    }
    // In a column of figures "two" is 2.
    if (quantity.as_written.empty() || number_in_words(quantity.as_written, 0)) {
        const auto amount = qualified(quantity, range_text({low}, {high}, style));
        return {begins_with_figure(quantity.item) ? amount + " ×" : amount, quantity.item};
    }
    const auto amount = amount_as_written(quantity);
    return amount ? AmountAndItem{*amount, quantity.item} : AmountAndItem{"", quantity.as_written};
}

std::string to_text(const Quantity& quantity, const UnitStyle& style) {
    const auto [amount, item] = amount_and_item(quantity, style);
    return amount.empty() || item.empty() ? amount + item : amount + " " + item;
}

std::string to_text(Mass mass, const UnitStyle& style) {
    // Labels show whole grams, and kilograms to two decimals.
    const auto grams = std::llround(mass.grams);
    const auto text = grams < 1000 ? fmt::format("{} g", grams)
                                   : decimal(mass.grams / 1000.0, 2, style.decimal_mark) + " kg";
    return in_style(text, to_text(pounds_and_ounces(mass.grams), style), true, style);
}

std::string thickness_text(Length length, const UnitStyle& style) {
    const auto inches = nearest_multiple(length.in_inches(), {1, 8});
    return in_style(fmt::format("{} mm", std::llround(length.in_millimetres())),
                    number(inches, Unit::Count, style.decimal_mark) + " in", true, style);
}

} // namespace thawslip::kitchen
