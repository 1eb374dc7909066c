#include "kitchen/measures/temperature_text.h"
#include "kitchen/measures/unit_text.h"
#include "kitchen/measures/units.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

Quantity quantity(Amount low, Unit unit, const char* item, const char* as_written) {
    return {low, low, unit, "", item, as_written};
}

std::string turned(Amount amount, Unit unit, Measures measures = Measures::Us) {
    return to_text(in_other_system({amount, unit}, measures));
}

constexpr std::int64_t largest = std::numeric_limits<std::int64_t>::max();

} // namespace

TEST_CASE("conversion is exact and loses nothing on the way back") {
    CHECK(convert({1, 3}, Unit::Cup, Unit::Tablespoon, Measures::Us) == Amount{16, 3});
    CHECK(convert({1, 1}, Unit::Gallon, Unit::Teaspoon, Measures::Us) == Amount{768, 1});
    CHECK(convert({1, 1}, Unit::Pound, Unit::Ounce, Measures::Us) == Amount{16, 1});
    CHECK(convert({1, 1}, Unit::Tablespoon, Unit::Teaspoon, Measures::Australian) == Amount{4, 1});
    CHECK(convert({1, 1}, Unit::Tablespoon, Unit::Teaspoon, Measures::Metric) == Amount{3, 1});
    CHECK(convert({5, 2}, Unit::Decilitre, Unit::Millilitre, Measures::Us) == Amount{250, 1});
    CHECK(convert({1500, 1}, Unit::Milligram, Unit::Gram, Measures::Us) == Amount{3, 2});
    for (int u = 0; u <= static_cast<int>(Unit::Gallon); ++u) {
        for (int v = 0; v <= static_cast<int>(Unit::Gallon); ++v) {
            const auto from = static_cast<Unit>(u);
            const auto to = static_cast<Unit>(v);
            const auto there = convert({7, 3}, from, to, Measures::Imperial);
            REQUIRE(there.has_value() == (dimension(from) == dimension(to)));
            if (there) {
                CHECK(convert(*there, to, from, Measures::Imperial) == Amount{7, 3});
            }
        }
    }
}

TEST_CASE("what needs more than 63 bits is no number instead of a wrong one") {
    CHECK_FALSE(convert({largest, 1}, Unit::Kilogram, Unit::Gram, Measures::Us));
    CHECK_FALSE(convert({std::numeric_limits<std::int64_t>::min(), 1}, Unit::Cup, Unit::Pint,
                        Measures::Us));
    CHECK(turned({largest, 1}, Unit::Litre).empty());
    CHECK(multiply({largest, 2}, {2, largest}) == Amount{1, 1});
}

TEST_CASE("cups, spoons and pints are those of the cook's own drawer") {
    const auto millilitres = [](Unit unit, Measures measures) {
        return factor(unit, measures).value();
    };
    CHECK(millilitres(Unit::Cup, Measures::Us) == doctest::Approx(236.5882365));
    CHECK(millilitres(Unit::Cup, Measures::Metric) == 250);
    CHECK(millilitres(Unit::Cup, Measures::Australian) == 250);
    CHECK(millilitres(Unit::Cup, Measures::Imperial) == doctest::Approx(284.130625));
    CHECK(millilitres(Unit::Tablespoon, Measures::Australian) == 20);
    CHECK(millilitres(Unit::Tablespoon, Measures::Metric) == 15);
    CHECK(millilitres(Unit::Pint, Measures::Imperial) == doctest::Approx(568.26125));
    CHECK(millilitres(Unit::Pint, Measures::Us) == doctest::Approx(473.176473));
}

TEST_CASE("amounts are converted into what cooks would write") {
    struct Case {
        Amount amount;
        Unit unit;
        const char* expected;
    };
    const Case cases[] = {
        {{1, 1}, Unit::Litre, "4¼ cups"},
        {{250, 1}, Unit::Millilitre, "1 cup 1 tbsp"},
        {{500, 1}, Unit::Millilitre, "2 cups 2 tbsp"},
        {{750, 1}, Unit::Millilitre, "3 cups 3 tbsp"},
        {{150, 1}, Unit::Millilitre, "½ cup 2 tbsp"},
        {{100, 1}, Unit::Millilitre, "7 tbsp"},
        {{60, 1}, Unit::Millilitre, "¼ cup"},
        {{30, 1}, Unit::Millilitre, "2 tbsp"},
        {{15, 1}, Unit::Millilitre, "1 tbsp"},
        {{5, 1}, Unit::Millilitre, "1 tsp"},
        {{5, 2}, Unit::Millilitre, "½ tsp"},
        {{4, 1}, Unit::Litre, "4¼ qt"},
        {{2, 1}, Unit::Decilitre, "¾ cup 1½ tbsp"},
        {{11, 5}, Unit::Kilogram, "4 lb 14 oz"},
        {{450, 1}, Unit::Gram, "1 lb"},
        {{200, 1}, Unit::Gram, "7 oz"},
        {{1, 1}, Unit::Kilogram, "2 lb 3 oz"},
        {{15, 1}, Unit::Gram, "½ oz"},
        {{30, 1}, Unit::Gram, "1 oz"},
        {{3, 1}, Unit::Gram, ""},
        {{500, 1}, Unit::Milligram, ""},
        {{1, 1}, Unit::Cup, "240 ml"},
        {{1, 3}, Unit::Cup, "80 ml"},
        {{1, 4}, Unit::Cup, "60 ml"},
        {{3, 4}, Unit::Cup, "180 ml"},
        {{2, 1}, Unit::Cup, "470 ml"},
        {{1, 1}, Unit::Quart, "950 ml"},
        {{1, 1}, Unit::Gallon, "3.75 l"},
        {{1, 1}, Unit::Pound, "450 g"},
        {{8, 1}, Unit::Ounce, "225 g"},
        {{1, 1}, Unit::Ounce, "28 g"},
        {{5, 1}, Unit::Pound, "2.25 kg"},
        {{296, 25}, Unit::Pound, "5.5 kg"}, // 5.37 kg: halves come before quarters that are nearer
        {{227, 40}, Unit::Quart, "5.5 l"},
        {{1, 1}, Unit::FluidOunce, "30 ml"},
        {{2, 1}, Unit::Tablespoon, ""},
        {{3, 1}, Unit::Count, ""},
        {{0, 1}, Unit::Litre, ""},
        {{-1, 1}, Unit::Litre, ""},
    };
    for (const auto& c : cases) {
        CAPTURE(c.expected);
        CAPTURE(c.amount.value());
        CHECK(turned(c.amount, c.unit) == c.expected);
    }
    CHECK(turned({1, 1}, Unit::Litre, Measures::Metric) == "4 cups");
    CHECK(turned({1, 1}, Unit::Litre, Measures::Imperial) == "1¾ pt");
    CHECK(turned({100, 1}, Unit::Millilitre, Measures::Imperial) == "3½ fl oz");
    CHECK(turned({350, 1}, Unit::Millilitre, Measures::Imperial) == "12½ fl oz");
    CHECK(turned({900, 1}, Unit::Millilitre, Measures::Imperial) == "1 pt 12 fl oz");
    CHECK(turned({20, 1}, Unit::Millilitre, Measures::Australian) == "1 tbsp");
}

TEST_CASE("a turned amount is never off by more than a cook would mind") {
    for (int base = 60; base <= 5000; base += 7) {
        for (const auto unit : {Unit::Millilitre, Unit::Gram}) {
            const Measure measure{{base, 1}, unit};
            double back = 0;
            for (const auto& part : in_other_system(measure, Measures::Us)) {
                back += part.amount.value() * factor(part.unit, Measures::Us).value();
            }
            CAPTURE(base);
            CHECK(std::abs(back - base) <= 0.065 * base);
        }
    }
    for (int quarters = 1; quarters <= 80; ++quarters) {
        const Measure cups{{quarters, 4}, Unit::Cup};
        const auto parts = in_other_system(cups, Measures::Us);
        REQUIRE(parts.size() == 1);
        const double there = parts[0].amount.value() * factor(parts[0].unit, Measures::Us).value();
        const double exact = quarters / 4.0 * factor(Unit::Cup, Measures::Us).value();
        CHECK(std::abs(there - exact) <= 0.025 * exact);
    }
}

TEST_CASE("a quantity shows both systems, or the one that is asked for") {
    const auto stock = quantity({1, 1}, Unit::Litre, "vegetable stock", "1 l vegetable stock");
    const auto milk = quantity({1, 2}, Unit::Cup, "milk", "1/2 cup milk");
    CHECK(to_text(stock, {}) == "1 l (4¼ cups) vegetable stock");
    CHECK(to_text(milk, {}) == "½ cup (120 ml) milk");
    CHECK(to_text(stock, {.units = Units::Metric}) == "1 l vegetable stock");
    CHECK(to_text(stock, {.units = Units::Us}) == "4¼ cups vegetable stock");
    CHECK(to_text(milk, {.units = Units::Metric}) == "120 ml milk");
    CHECK(to_text(milk, {.units = Units::Us}) == "½ cup milk");

    Quantity range = quantity({1, 2}, Unit::Kilogram, "squash", "500–750 g squash");
    range.high = Amount{3, 4};
    CHECK(to_text(range, {.decimal_mark = ','}) == "0,5–0,75 kg (1 lb 2 oz–1 lb 10 oz) squash");
    range = quantity({2, 1}, Unit::Cup, "lentils", "2–3 cups lentils");
    range.high = Amount{3, 1};
    CHECK(to_text(range, {}) == "2–3 cups (470–700 ml) lentils");
    CHECK(to_text(quantity({39, 8}, Unit::Pound, "pork", "4 lb 14 oz pork"), {}) ==
          "4 lb 14 oz (2.25 kg) pork");
    CHECK(to_text(quantity({11, 2}, Unit::Pound, "pork", "5 1/2 lb pork"), {}) ==
          "5½ lb (2.5 kg) pork");
    CHECK(to_text(quantity({1200, 1}, Unit::Gram, "leeks", ""), {.units = Units::Metric}) ==
          "1.2 kg leeks");
    auto about = stock;
    about.qualifier = "about";
    CHECK(to_text(about, {}) == "about 1 l (4¼ cups) vegetable stock");
}

TEST_CASE("what cannot be converted stays in the cook's own words") {
    CHECK(to_text(quantity({3, 1}, Unit::Count, "onions", "3 onions, sliced"), {}) ==
          "3 onions, sliced");
    CHECK(to_text(quantity({2, 1}, Unit::Tablespoon, "capers", "2 heaping tbsp capers"), {}) ==
          "2 heaping tbsp capers");
    Quantity salt;
    salt.as_written = "salt to taste";
    CHECK(to_text(salt, {}) == "salt to taste");
}

TEST_CASE("an amount and its item come apart for the columns of a table") {
    const auto apart = [](const Quantity& written) {
        const auto parts = amount_and_item(written, {});
        return parts.amount + "|" + parts.item;
    };
    CHECK(apart(quantity({1, 1}, Unit::Litre, "stock", "1 l stock")) == "1 l (4¼ cups)|stock");
    CHECK(apart(quantity({3, 1}, Unit::Count, "onions", "3 onions")) == "3|onions");
    CHECK(apart(quantity({2, 1}, Unit::Tablespoon, "capers", "2 heaping tbsp capers")) ==
          "2 heaping tbsp|capers");
    CHECK(apart(quantity({3, 1}, Unit::Count, "onions", "3 onions, sliced")) ==
          "|3 onions, sliced");
    CHECK(apart(quantity({6, 1}, Unit::Tablespoon, "mustard", "")) == "6 tbsp|mustard");
    CHECK(apart(quantity({2, 1}, Unit::Count, "pears", "two pears")) == "2|pears");
    CHECK(apart(quantity({1, 2}, Unit::Count, "pear", "half a pear")) == "½|pear");
    const char* tins = "400 g tins tomatoes";
    CHECK(apart(quantity({2, 1}, Unit::Count, tins, "2 x 400 g tins tomatoes")) ==
          "2 ×|400 g tins tomatoes");
    CHECK(apart(quantity({5, 1}, Unit::Count, tins, "")) == "5 ×|400 g tins tomatoes");
    Quantity salt;
    salt.as_written = "salt to taste";
    CHECK(apart(salt) == "|salt to taste");
}

TEST_CASE("a bag's weight and thickness show both systems") {
    CHECK(to_text(Mass{2200}, {}) == "2.2 kg (4 lb 14 oz)");
    CHECK(to_text(Mass{850}, {}) == "850 g (1 lb 14 oz)");
    CHECK(to_text(Mass{2200}, {.units = Units::Us}) == "4 lb 14 oz");
    CHECK(to_text(Mass{1255}, {.units = Units::Metric, .decimal_mark = ','}) == "1,25 kg");
    CHECK(to_text(Mass{2}, {}) == "2 g");
    CHECK(thickness_text(Length::millimetres(30), {}) == "30 mm (1⅛ in)");
    CHECK(thickness_text(Length::millimetres(25.4), {}) == "25 mm (1 in)");
    CHECK(thickness_text(Length::inches(0.75), {.units = Units::Us}) == "¾ in");
}

TEST_CASE("temperatures round to the safe side") {
    struct Case {
        double degrees;
        TemperatureScale scale;
        TemperatureUse use;
        const char* expected;
    };
    using enum TemperatureScale;
    using enum TemperatureUse;
    const Case cases[] = {
        {74, Celsius, SafeMinimum, "74 °C (165 °F)"},
        {73.9, Celsius, SafeMinimum, "73.9 °C (165 °F)"},
        {63, Celsius, SafeMinimum, "63 °C (145 °F)"},
        {62.8, Celsius, SafeMinimum, "62.8 °C (145 °F)"},
        {71, Celsius, SafeMinimum, "71 °C (160 °F)"},
        {72, Celsius, SafeMinimum, "72 °C (162 °F)"},
        {70, Celsius, SafeMinimum, "70 °C (158 °F)"},
        {75, Celsius, SafeMinimum, "75 °C (167 °F)"},
        {76, Celsius, SafeMinimum, "76 °C (169 °F)"},
        {165, Fahrenheit, SafeMinimum, "165 °F (74 °C)"},
        {160, Fahrenheit, SafeMinimum, "160 °F (71 °C)"},
        {180, Fahrenheit, SafeMinimum, "180 °F (82 °C)"},
        {158, Fahrenheit, SafeMinimum, "158 °F (70 °C)"},
        {145, Fahrenheit, SafeMinimum, "145 °F (63 °C)"},
        {40, Fahrenheit, ColdLimit, "40 °F (4 °C)"},
        {0, Fahrenheit, ColdLimit, "0 °F (-18 °C)"},
        {41, Fahrenheit, ColdLimit, "41 °F (5 °C)"},
        {4, Celsius, ColdLimit, "4 °C (40 °F)"},
        {5, Celsius, ColdLimit, "5 °C (41 °F)"},
        {-18, Celsius, ColdLimit, "-18 °C (0 °F)"},
        {3, Celsius, ColdLimit, "3 °C (37 °F)"},
        {180, Celsius, Oven, "180 °C (350 °F)"},
        {350, Fahrenheit, Oven, "350 °F (180 °C)"},
        {200, Celsius, Oven, "200 °C (400 °F)"},
        {325, Fahrenheit, Oven, "325 °F (160 °C)"},
        {425, Fahrenheit, Oven, "425 °F (220 °C)"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.expected);
        const double celsius = c.scale == Celsius ? c.degrees : (c.degrees - 32) * 5 / 9;
        CHECK(to_text(Temperature{celsius, c.scale}, c.use, UnitStyle{}) == c.expected);
    }
    CHECK(to_text(Temperature{74, Celsius}, SafeMinimum, {.units = Units::Us}) == "165 °F");
    CHECK(to_text(Temperature{73.9, Celsius}, SafeMinimum,
                  {.units = Units::Metric, .decimal_mark = ','}) == "73,9 °C");
}

TEST_CASE("a safe minimum never gets lower by being turned, nor a cold limit higher") {
    using enum TemperatureUse;
    const auto number = [](const std::string& text) { return std::stod(text); };
    for (int f = 100; f <= 220; ++f) {
        const double exact = (f - 32) * 5.0 / 9.0;
        const Temperature written{exact, TemperatureScale::Fahrenheit};
        // But for two figures that every agency prints lower: 160 °F as 71 °C, 180 °F as 82 °C.
        const double printed = f == 160 ? 71 : f == 180 ? 82 : exact;
        CHECK(number(to_text(written, SafeMinimum, {.units = Units::Metric})) >= printed - 1e-9);
        const double cold = (f - 100 - 32) * 5.0 / 9.0;
        const Temperature chilled{cold, TemperatureScale::Fahrenheit};
        CHECK(number(to_text(chilled, ColdLimit, {.units = Units::Metric})) <= cold + 1e-9);
    }
}
