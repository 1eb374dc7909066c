#include "kitchen/measures/quantity.h"
#include "support/random.h"

#include <doctest/doctest.h>
#include <iterator>
#include <string>
#include <vector>

using namespace thawslip::kitchen;

namespace {

struct WantedQuantity {
    const char* text;
    Amount low, high;
    Unit unit;
    const char* item;
    const char* qualifier = "";
};

void check_reads(const WantedQuantity& wanted) {
    CAPTURE(wanted.text);
    const auto read = parse_quantity(wanted.text);
    REQUIRE(read.ok());
    const auto& quantity = read.value();
    CHECK(quantity.low == wanted.low);
    CHECK(quantity.high == wanted.high);
    CHECK(quantity.unit == wanted.unit);
    CHECK(quantity.item == wanted.item);
    CHECK(quantity.qualifier == wanted.qualifier);
    CHECK(quantity.as_written == wanted.text);
}

} // namespace

TEST_CASE("every word for a unit is known, apart from its number or directly behind it") {
    // Names, mL, L, g and kg: NIST, Cooking Measurement Equivalencies; the British spellings and
    // the other abbreviations: common practice, no source.
    using Words = std::vector<std::string>;
    const struct {
        Unit unit;
        Words words;
    } rows[] = {
        {Unit::Milligram, {"mg", "milligram", "milligrams"}},
        {Unit::Gram, {"g", "gram", "grams"}},
        {Unit::Kilogram, {"kg", "kilo", "kilos", "kilogram", "kilograms"}},
        {Unit::Ounce, {"oz", "ounce", "ounces"}},
        {Unit::Pound, {"lb", "lbs", "pound", "pounds"}},
        {Unit::Millilitre, {"ml", "mL", "millilitre", "millilitres", "milliliter", "milliliters"}},
        {Unit::Centilitre, {"cl", "centilitre", "centilitres", "centiliter", "centiliters"}},
        {Unit::Decilitre, {"dl", "decilitre", "decilitres", "deciliter", "deciliters"}},
        {Unit::Litre, {"l", "L", "litre", "litres", "liter", "liters"}},
        {Unit::Teaspoon, {"tsp", "tsps", "teaspoon", "teaspoons"}},
        {Unit::Tablespoon, {"tbsp", "tbsps", "tbs", "tablespoon", "tablespoons"}},
        {Unit::FluidOunce, {"fl oz", "fl. oz", "fluid ounce", "fluid ounces"}},
        {Unit::Cup, {"cup", "cups"}},
        {Unit::Pint, {"pt", "pint", "pints"}},
        {Unit::Quart, {"qt", "qts", "quart", "quarts"}},
        {Unit::Gallon, {"gal", "gallon", "gallons"}},
    };
    CHECK(std::size(rows) == static_cast<std::size_t>(Unit::Gallon)); // all but Count
    for (const auto& row : rows) {
        for (const auto& word : row.words) {
            for (const auto& between : {"", " ", "\u00A0"}) {
                for (const auto& end : {" rye", ", rye", ". rye"}) {
                    const auto text = std::string{"3"} + between + word + end;
                    CAPTURE(text);
                    const auto read = parse_quantity(text);
                    REQUIRE(read.ok());
                    CHECK(read.value().unit == row.unit);
                    CHECK(read.value().low == Amount{3, 1});
                    CHECK(read.value().item == "rye");
                }
            }
            const auto range = parse_quantity("2-3" + word);
            REQUIRE(range.ok());
            CHECK(range.value().unit == row.unit);
            CHECK(range.value().high == Amount{3, 1});
            CHECK(parse_quantity("½" + word).value().unit == row.unit);
        }
        CHECK(parse_quantity("3 " + std::string{symbol(row.unit)}).value().unit == row.unit);
    }
}

TEST_CASE("quantities are read as cooks write them") {
    const WantedQuantity cases[] = {
        {"2.2 kg", {11, 5}, {11, 5}, Unit::Kilogram, ""},
        {"2,2 kg", {11, 5}, {11, 5}, Unit::Kilogram, ""},
        {"1 l vegetable stock", {1, 1}, {1, 1}, Unit::Litre, "vegetable stock"},
        {"1 L vegetable stock", {1, 1}, {1, 1}, Unit::Litre, "vegetable stock"},
        {"½ cup", {1, 2}, {1, 2}, Unit::Cup, ""},
        {"1½ cups milk", {3, 2}, {3, 2}, Unit::Cup, "milk"},
        {"1 1/2 tsp cider vinegar", {3, 2}, {3, 2}, Unit::Teaspoon, "cider vinegar"},
        {"2 heaping tbsp capers", {2, 1}, {2, 1}, Unit::Tablespoon, "capers", "heaping"},
        {"about 2 heaped Tbsp. capers", {2, 1}, {2, 1}, Unit::Tablespoon, "capers", "about heaped"},
        {"3–4 onions", {3, 1}, {4, 1}, Unit::Count, "onions"},
        {"3-4 onions", {3, 1}, {4, 1}, Unit::Count, "onions"},
        {"3 to 4 onions", {3, 1}, {4, 1}, Unit::Count, "onions"},
        {"3 or 4 onions", {3, 1}, {4, 1}, Unit::Count, "onions"},
        {"2-3 tbsp oil", {2, 1}, {3, 1}, Unit::Tablespoon, "oil"},
        {"about 200 g spinach", {200, 1}, {200, 1}, Unit::Gram, "spinach", "about"},
        {"8 fl oz cream", {8, 1}, {8, 1}, Unit::FluidOunce, "cream"},
        {"8 fl. oz. cream", {8, 1}, {8, 1}, Unit::FluidOunce, "cream"},
        {"200g spinach", {200, 1}, {200, 1}, Unit::Gram, "spinach"},
        {"200\u00A0g\u00A0spinach", {200, 1}, {200, 1}, Unit::Gram, "spinach"},
        {"2 cloves of garlic", {2, 1}, {2, 1}, Unit::Count, "cloves of garlic"},
        {"200 g, sliced", {200, 1}, {200, 1}, Unit::Gram, "sliced"},
        {"1-1/2 cups milk", {3, 2}, {3, 2}, Unit::Cup, "milk"},
        {"1 - 1½ cups milk", {1, 1}, {3, 2}, Unit::Cup, "milk"},
        {"1⁄2 l cider", {1, 2}, {1, 2}, Unit::Litre, "cider"},
        {"1.250 kg plums", {5, 4}, {5, 4}, Unit::Kilogram, "plums"},
        {"0.125 g saffron", {1, 8}, {1, 8}, Unit::Gram, "saffron"},
        {"2,2 kg pears", {11, 5}, {11, 5}, Unit::Kilogram, "pears"},
        {"12.25 g salt", {49, 4}, {49, 4}, Unit::Gram, "salt"},
        {"999999.9999 g salt", {9999999999, 10000}, {9999999999, 10000}, Unit::Gram, "salt"},
        {"2 cups of oats", {2, 1}, {2, 1}, Unit::Cup, "oats"},
        {"1 cup, packed brown sugar", {1, 1}, {1, 1}, Unit::Cup, "packed brown sugar"},
        {"1 lb. sausages", {1, 1}, {1, 1}, Unit::Pound, "sausages"},
        {"4 lb 14 oz beef", {39, 8}, {39, 8}, Unit::Pound, "beef"},
        {"4 lb 1 1/2 oz beef", {131, 32}, {131, 32}, Unit::Pound, "beef"},
        {"2 x 400 g tins tomatoes", {2, 1}, {2, 1}, Unit::Count, "400 g tins tomatoes"},
        {"2×400 g tins tomatoes", {2, 1}, {2, 1}, Unit::Count, "400 g tins tomatoes"},
        {"1 (400 g) tin tomatoes", {1, 1}, {1, 1}, Unit::Count, "(400 g) tin tomatoes"},
        {"2 7-inch tortillas", {2, 1}, {2, 1}, Unit::Count, "7-inch tortillas"},
        {"1 cup 2% milk", {1, 1}, {1, 1}, Unit::Cup, "2% milk"},
        {"2 tbsp capers, or to taste", {2, 1}, {2, 1}, Unit::Tablespoon, "capers, or to taste"},
        {"3 large x-shaped pastas", {3, 1}, {3, 1}, Unit::Count, "large x-shaped pastas"},
        {"6 eggs", {6, 1}, {6, 1}, Unit::Count, "eggs"},
        {"4 grapes", {4, 1}, {4, 1}, Unit::Count, "grapes"},
    };
    for (const auto& c : cases) {
        check_reads(c);
    }
}

TEST_CASE("a number in words is an amount where it counts, and not where it is part of a name") {
    const WantedQuantity wanted[] = {
        {"Half a lemon", {1, 2}, {1, 2}, Unit::Count, "lemon"},
        {"half a cup of cream", {1, 2}, {1, 2}, Unit::Cup, "cream"},
        {"eine halbe Zitrone", {1, 2}, {1, 2}, Unit::Count, "Zitrone"},
        {"media cebolla, picada", {1, 2}, {1, 2}, Unit::Count, "cebolla, picada"},
        {"about half an onion", {1, 2}, {1, 2}, Unit::Count, "onion", "about"},
        {"a litre of cider", {1, 1}, {1, 1}, Unit::Litre, "cider"},
        {"A pear", {1, 1}, {1, 1}, Unit::Count, "pear"},
        {"an apple, grated", {1, 1}, {1, 1}, Unit::Count, "apple, grated"},
        {"two onions", {2, 1}, {2, 1}, Unit::Count, "onions"},
        {"A handful of parsley", {1, 1}, {1, 1}, Unit::Count, "handful of parsley"},
        {"Three cloves of garlic", {3, 1}, {3, 1}, Unit::Count, "cloves of garlic"},
        {"four large eggs, beaten", {4, 1}, {4, 1}, Unit::Count, "large eggs, beaten"},
        {"two to three carrots", {2, 1}, {3, 1}, Unit::Count, "carrots"},
        {"two tbsp verjuice", {2, 1}, {2, 1}, Unit::Tablespoon, "verjuice"},
        {"two x 400 g tins tomatoes", {2, 1}, {2, 1}, Unit::Count, "400 g tins tomatoes"},
        {"one 400 g tin tomatoes", {1, 1}, {1, 1}, Unit::Count, "400 g tin tomatoes"},
        {"zwei Zwiebeln", {2, 1}, {2, 1}, Unit::Count, "Zwiebeln"},
        {"zwei bis drei Möhren", {2, 1}, {3, 1}, Unit::Count, "Möhren"},
        {"einen Liter Apfelsaft", {1, 1}, {1, 1}, Unit::Litre, "Apfelsaft"},
        {"dos cebollas", {2, 1}, {2, 1}, Unit::Count, "cebollas"},
        {"una pera", {1, 1}, {1, 1}, Unit::Count, "pera"},
        {"twelve prunes", {12, 1}, {12, 1}, Unit::Count, "prunes"},
    };
    for (const auto& one : wanted) {
        check_reads(one);
    }
    for (const char* words : {"half a 400 g tin tomatoes",
                              "half and half",
                              "half",
                              "mediasnoches",
                              "five spice powder",
                              "three bean mix",
                              "four cheese sauce",
                              "cuatro quesos",
                              "cinco especias",
                              "half-fat milk",
                              "one",
                              "one and a half onions",
                              "two of these",
                              "a few chives",
                              "a little salt",
                              "a couple of pears",
                              "ein paar Birnen",
                              "un poco de sal",
                              "a gusto",
                              "two cress",
                              "seven"}) {
        CAPTURE(words);
        const auto read = parse_quantity(words);
        REQUIRE(read.ok());
        CHECK_FALSE(read.value().low.has_value());
        CHECK(read.value().as_written == words);
    }
}

TEST_CASE("the measures of NIST's kitchen table are read with the names and signs it uses") {
    // NIST, Cooking Measurement Equivalencies (nist.gov/pml/owm/cooking-measurement-equivalencies).
    const WantedQuantity cases[] = {
        {"1.25 mL", {5, 4}, {5, 4}, Unit::Millilitre, ""},
        {"1/4 teaspoon", {1, 4}, {1, 4}, Unit::Teaspoon, ""},
        {"2.5 mL", {5, 2}, {5, 2}, Unit::Millilitre, ""},
        {"1 tablespoon", {1, 1}, {1, 1}, Unit::Tablespoon, ""},
        {"1/2 fluid ounce", {1, 2}, {1, 2}, Unit::FluidOunce, ""},
        {"3 fluid ounces", {3, 1}, {3, 1}, Unit::FluidOunce, ""},
        {"1/3 cup", {1, 3}, {1, 3}, Unit::Cup, ""},
        {"3/4 cups", {3, 4}, {3, 4}, Unit::Cup, ""},
        {"1 pint", {1, 1}, {1, 1}, Unit::Pint, ""},
        {"1 quart", {1, 1}, {1, 1}, Unit::Quart, ""},
        {"1.95 L", {39, 20}, {39, 20}, Unit::Litre, ""},
        {"1/2 gallon", {1, 2}, {1, 2}, Unit::Gallon, ""},
        {"3.84 L", {96, 25}, {96, 25}, Unit::Litre, ""},
        {"28 g", {28, 1}, {28, 1}, Unit::Gram, ""},
        {"1 ounce", {1, 1}, {1, 1}, Unit::Ounce, ""},
        {"1/4 pound", {1, 4}, {1, 4}, Unit::Pound, ""},
        {"1 kg", {1, 1}, {1, 1}, Unit::Kilogram, ""},
        {"2.2 pounds", {11, 5}, {11, 5}, Unit::Pound, ""},
    };
    for (const auto& c : cases) {
        check_reads(c);
    }
}

TEST_CASE("British and American spellings and plurals name the same unit") {
    const std::pair<const char*, Unit> words[] = {{"litre", Unit::Litre},
                                                  {"liters", Unit::Litre},
                                                  {"millilitres", Unit::Millilitre},
                                                  {"milliliter", Unit::Millilitre},
                                                  {"centiliters", Unit::Centilitre},
                                                  {"decilitre", Unit::Decilitre},
                                                  {"kilos", Unit::Kilogram},
                                                  {"GRAMS", Unit::Gram},
                                                  {"lbs", Unit::Pound},
                                                  {"tbsps", Unit::Tablespoon},
                                                  {"tbs", Unit::Tablespoon},
                                                  {"pts", Unit::Pint},
                                                  {"qt.", Unit::Quart},
                                                  {"gal", Unit::Gallon}};
    for (const auto& [word, unit] : words) {
        CAPTURE(word);
        const auto read = parse_quantity("3 " + std::string{word} + " cider");
        REQUIRE(read.ok());
        CHECK(read.value().unit == unit);
        CHECK(read.value().item == "cider");
    }
}

TEST_CASE("an amount that is no number keeps its words") {
    struct Case {
        const char* text;
        const char* item;
        const char* qualifier;
    };
    const Case cases[] = {
        {"salt to taste", "salt", "to taste"},
        {"Salt, to taste", "Salt", "to taste"},
        {"to taste", "", "to taste"},
        {"a pinch of nutmeg", "nutmeg", "a pinch of"},
        {"A dash of cider", "cider", "a dash of"},
        {"oil as needed", "oil", "as needed"},
        {"some bread", "bread", "some"},
        {"a few walnuts", "walnuts", "a few"},
        {"a little cider", "cider", "a little"},
        {"baby spinach", "baby spinach", ""},
        // Words that only begin or end like these.
        {"something green", "something green", ""},
        {"somen noodles", "somen noodles", ""},
        {"Somerset brie", "Somerset brie", ""},
        {"wholesome", "wholesome", ""},
        {"potato taste", "potato taste", ""},
        // Numbers that belong to a name.
        {"5-spice powder", "5-spice powder", ""},
        {"100% rye flour", "100% rye flour", ""},
        {"2-inch piece of ginger", "2-inch piece of ginger", ""},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto read = parse_quantity(c.text);
        REQUIRE(read.ok());
        CHECK_FALSE(read.value().low.has_value());
        CHECK_FALSE(read.value().high.has_value());
        CHECK(read.value().item == c.item);
        CHECK(read.value().qualifier == c.qualifier);
        CHECK(read.value().as_written == c.text);
    }
}

TEST_CASE("what cannot be one amount is refused where it goes wrong") {
    struct Case {
        const char* text;
        std::size_t offset;
        const char* message;
    };
    const char* const not_above = "an amount is above 0";
    const char* const one_amount = "expected one amount, such as \"500-1000 g\" or \"2 x 400 g\"";
    const char* const too_long = "the number has more digits than a kitchen needs";
    const Case cases[] = {
        {"", 0, "expected an amount such as \"200 g baby spinach\""},
        {"  ", 0, "expected an amount such as \"200 g baby spinach\""},
        {"99999999999999999999 kg", 0, too_long},
        {"about 12345678 g salt", 6, too_long},
        {"3-99999999 onions", 2, too_long},
        {"1.23456 kg", 2, too_long},
        {"0 g salt", 0, not_above},
        {"0.00 kg", 0, not_above},
        {"-3 onions", 0, not_above},
        {"− 3 onions", 0, not_above},
        {"4-3 onions", 0, "the smaller amount comes first"},
        {"1 - 1/2 cups", 0, "the smaller amount comes first"},
        {"kg", 0, "expected a number before the unit"},
        {"about kg.", 6, "expected a number before the unit"},
        {"1/0 cup", 1, "nothing can be divided by 0"},
        {"1,000 g flour", 1, "it may mean 1 or 1000: write one of them without a comma"},
        {"200-1,000 g flour", 5, "it may mean 1 or 1000: write one of them without a comma"},
        {"1.000 g flour", 1, "it may mean 1 or 1000: write one of them without a point"},
        {"2.500 g flour", 1, "it may mean 2.5 or 2500: write one of them"},
        {"12.250 ml stock", 2, "it may mean 12.25 or 12250: write one of them"},
        {"1.375 g yeast", 1,
         "it may mean 1.375 or 1375: write 1375, or fewer digits after the point"},
        {"500-1.500 g flour", 5, "it may mean 1.5 or 1500: write one of them"},
        {"1.200 chestnuts", 1, "it may mean 1.2 or 1200: write one of them"},
        {"1/99999999999999999999 cup", 2, too_long},
        {"2 cups 4 oz chocolate", 7, one_amount}, // ounces are a part of pounds alone
        {"2-1/0 cup", 3, "nothing can be divided by 0"},
        {"1/2/3 cup", 0, "expected a number such as 2, 2.5, ½ or 1 1/2"},
        {"1e5 g", 1, "expected a space or a unit after the number"},
        {"2onions", 1, "expected a space or a unit after the number"},
        {"1 400 g flour", 2, one_amount},
        {"1 kg 200 g flour", 5, one_amount},
        {"500 g - 1 kg flour", 6, one_amount},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto read = parse_quantity(c.text);
        REQUIRE_FALSE(read.ok());
        CHECK(read.fault().offset == c.offset);
        CHECK(read.fault().message == c.message);
    }
}

TEST_CASE("every unit's printed symbol is read back as that unit") {
    for (int u = static_cast<int>(Unit::Milligram); u <= static_cast<int>(Unit::Gallon); ++u) {
        const auto unit = static_cast<Unit>(u);
        const auto text = "3 " + std::string{symbol(unit)} + " flour";
        CAPTURE(text);
        const auto quantity = parse_quantity(text);
        REQUIRE(quantity.ok());
        CHECK(quantity.value().unit == unit);
        CHECK(quantity.value().item == "flour");
    }
}

TEST_CASE("any text gives a sound quantity or a fault inside the text") {
    thawslip::test_support::Random random{3};
    const std::string pieces[] = {
        "1",  "0",  "9",     "/",      ".",    ",",   "-",
        "–",  "½",  " ",     "\u00A0", "x",    "kg",  "oz",
        "lb", "fl", "of ",   "about",  "to ",  "%",   "−",
        "⁄",  "a ", "some ", "\xFF",   "\xE2", "1/2", std::string{"\0", 1}};
    for (int round = 0; round < 20'000; ++round) {
        std::string text;
        for (auto parts = random.below(8); parts > 0; --parts) {
            text += pieces[random.below(std::size(pieces))];
        }
        const auto read = parse_quantity(text);
        if (!read) {
            CHECK(read.fault().offset <= text.size());
            CHECK_FALSE(read.fault().message.empty());
        } else if (read.value().low) {
            CHECK(read.value().low->numerator > 0);
            CHECK(read.value().low->denominator > 0);
            CHECK(read.value().low->value() <= read.value().high->value());
        }
    }
}
