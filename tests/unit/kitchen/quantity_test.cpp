#include "kitchen/quantity.h"

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

TEST_CASE("a number that cannot be an amount is refused where it stands") {
    struct Case {
        const char* text;
        std::size_t offset;
    };
    const Case cases[] = {{"", 0},
                          {"   ", 0},
                          {"99999999999999999999 kg", 0},
                          {"about 12345678 g salt", 6},
                          {"0 g salt", 0},
                          {"4-3 onions", 0}};
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto quantity = parse_quantity(c.text);
        REQUIRE_FALSE(quantity.ok());
        CHECK(quantity.fault().offset == c.offset);
        CHECK_FALSE(quantity.fault().message.empty());
    }
}

TEST_CASE("a fraction over nothing is no number") {
    const auto quantity = parse_quantity("1/0 cup");
    // "1" can be read, "/0 cup" is then what it is of: nothing is divided by nothing.
    REQUIRE(quantity.ok());
    CHECK(quantity.value().low == Amount{1, 1});
    CHECK(quantity.value().unit == Unit::Count);
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
