#include "kitchen/quantity.h"
#include "support/random.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip::kitchen;

TEST_CASE("quantities are read as cooks write them") {
    struct Case {
        const char* text;
        Amount low, high;
        Unit unit;
        const char* item;
        const char* qualifier;
    };
    const Case cases[] = {
        {"2.2 kg", {11, 5}, {11, 5}, Unit::Kilogram, "", ""},
        {"2,2 kg", {11, 5}, {11, 5}, Unit::Kilogram, "", ""},
        {"1 l vegetable stock", {1, 1}, {1, 1}, Unit::Litre, "vegetable stock", ""},
        {"½ cup", {1, 2}, {1, 2}, Unit::Cup, "", ""},
        {"1½ cups milk", {3, 2}, {3, 2}, Unit::Cup, "milk", ""},
        {"1 1/2 tsp cider vinegar", {3, 2}, {3, 2}, Unit::Teaspoon, "cider vinegar", ""},
        {"2 heaping tbsp capers", {2, 1}, {2, 1}, Unit::Tablespoon, "capers", "heaping"},
        {"3–4 onions", {3, 1}, {4, 1}, Unit::Count, "onions", ""},
        {"3-4 onions", {3, 1}, {4, 1}, Unit::Count, "onions", ""},
        {"3 to 4 onions", {3, 1}, {4, 1}, Unit::Count, "onions", ""},
        {"about 200 g spinach", {200, 1}, {200, 1}, Unit::Gram, "spinach", "about"},
        {"8 fl oz cream", {8, 1}, {8, 1}, Unit::FluidOunce, "cream", ""},
        {"200g spinach", {200, 1}, {200, 1}, Unit::Gram, "spinach", ""},
        {"2 cloves of garlic", {2, 1}, {2, 1}, Unit::Count, "cloves of garlic", ""},
        {"1 lb. sausages", {1, 1}, {1, 1}, Unit::Pound, "sausages", ""},
        {"200 g, sliced", {200, 1}, {200, 1}, Unit::Gram, "sliced", ""},
        {"1-1/2 cups milk", {3, 2}, {3, 2}, Unit::Cup, "milk", ""},
        {"1-½ cups milk", {3, 2}, {3, 2}, Unit::Cup, "milk", ""},
        {"1 - 1½ cups milk", {1, 1}, {3, 2}, Unit::Cup, "milk", ""},
        {"1⁄2 l cider", {1, 2}, {1, 2}, Unit::Litre, "cider", ""},
        {"1⅐ l cider", {8, 7}, {8, 7}, Unit::Litre, "cider", ""},
        {"0,125 l cider", {1, 8}, {1, 8}, Unit::Litre, "cider", ""},
        {"1.250 kg plums", {5, 4}, {5, 4}, Unit::Kilogram, "plums", ""},
        {"2 fluid ounces cider", {2, 1}, {2, 1}, Unit::FluidOunce, "cider", ""},
        {"2 Tbsp. capers", {2, 1}, {2, 1}, Unit::Tablespoon, "capers", ""},
        {"2 x 400 g tins tomatoes", {2, 1}, {2, 1}, Unit::Count, "400 g tins tomatoes", ""},
        {"3 tomatoes", {3, 1}, {3, 1}, Unit::Count, "tomatoes", ""},
        {"1 large onion", {1, 1}, {1, 1}, Unit::Count, "large onion", ""},
        {"999999.9999 g salt", {9999999999, 10000}, {9999999999, 10000}, Unit::Gram, "salt", ""},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto quantity = parse_quantity(c.text);
        REQUIRE(quantity.ok());
        CHECK(quantity.value().low == c.low);
        CHECK(quantity.value().high == c.high);
        CHECK(quantity.value().unit == c.unit);
        CHECK(quantity.value().item == c.item);
        CHECK(quantity.value().qualifier == c.qualifier);
        CHECK(quantity.value().as_written == c.text);
    }
}

TEST_CASE("an amount that is no number keeps its words") {
    for (const char* text : {"salt to taste", "a pinch of salt"}) {
        CAPTURE(text);
        const auto quantity = parse_quantity(text);
        REQUIRE(quantity.ok());
        CHECK_FALSE(quantity.value().low.has_value());
        CHECK(quantity.value().item == "salt");
    }
    CHECK(parse_quantity("to taste").value().qualifier == "to taste");
}

TEST_CASE("an item whose name begins like a vague amount keeps its name") {
    for (const char* text : {"somen noodles", "something green", "tomatoes"}) {
        CAPTURE(text);
        const auto quantity = parse_quantity(text);
        REQUIRE(quantity.ok());
        CHECK(quantity.value().item == text);
        CHECK(quantity.value().qualifier.empty());
    }
}

TEST_CASE("a number that cannot be an amount is refused where it stands, and told why") {
    struct Case {
        const char* text;
        std::size_t offset;
        const char* message;
    };
    constexpr const char* too_exact =
        "a number has at most 6 digits and 4 decimals here, more than any kitchen needs";
    constexpr const char* bad_fraction =
        "a fraction has up to 3 digits above and below, and no 0 below";
    const Case cases[] = {
        {"", 0, "expected an amount such as \"200 g baby spinach\""},
        {"   ", 0, "expected an amount such as \"200 g baby spinach\""},
        {"99999999999999999999 kg", 0, too_exact},
        {"about 12345678 g salt", 6, too_exact},
        {"1.23456 kg salt", 0, too_exact},
        {"1.2.3 kg salt", 0, too_exact},
        {"200-99999999 g salt", 4, too_exact},
        {"0 g salt", 0, "an amount is above 0"},
        {"-2 g salt", 0, "an amount is above 0"},
        {"−2 g salt", 0, "an amount is above 0"},
        {"4-3 onions", 0, "the smaller amount comes first"},
        {"1/0 cup", 0, bad_fraction},
        {"2-1/0 cup", 2, bad_fraction},
        {"1/99999999999999999999 cup", 0, bad_fraction},
        {"kg", 0, "expected a number before the unit"},
        {"1,000 g flour", 0, "it may mean 1 or 1000: write one of them without a comma"},
        {"12,500 g flour", 0, "it may mean 12 or 12500: write one of them without a comma"},
        {"1.000 g flour", 0, "it may mean 1 or 1000: write one of them without a point"},
        {"200-1,000 g flour", 4, "it may mean 1 or 1000: write one of them without a comma"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto quantity = parse_quantity(c.text);
        REQUIRE_FALSE(quantity.ok());
        CHECK(quantity.fault().offset == c.offset);
        CHECK(quantity.fault().message == c.message);
    }
}

TEST_CASE("every unit's printed symbol is read back as that unit") {
    // NIST, Cooking Measurement Equivalencies, for the abbreviations of kitchen measures.
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

TEST_CASE("twenty thousand random texts are read or refused inside themselves, never a crash") {
    thawslip::test::Random random{11};
    const std::string_view pieces[] = {"1",
                                       "9999",
                                       ".",
                                       ",",
                                       "/",
                                       "½",
                                       "⁄",
                                       "-",
                                       "–",
                                       " ",
                                       "to ",
                                       "kg",
                                       "fl",
                                       "oz",
                                       "x ",
                                       "of ",
                                       std::string_view{"\0", 1},
                                       "\xFF",
                                       "a ",
                                       "some",
                                       "l",
                                       "−",
                                       "about ",
                                       "°",
                                       "\xE2"};
    for (int round = 0; round < 20'000; ++round) {
        std::string text;
        for (std::size_t count = random.below(8); count > 0; --count) {
            text += pieces[random.below(std::size(pieces))];
        }
        const auto quantity = parse_quantity(text);
        CAPTURE(text);
        if (quantity) {
            const auto& low = quantity.value().low;
            CHECK((!low || (low->numerator > 0 && low->denominator > 0)));
        } else {
            CHECK(quantity.fault().offset <= text.size());
            CHECK_FALSE(quantity.fault().message.empty());
        }
    }
}
