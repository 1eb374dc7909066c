#include "kitchen/shopping.h"

#include <doctest/doctest.h>

using namespace thawslip::kitchen;

namespace {

Quantity quantity(std::string_view text) {
    const auto read = parse_quantity(text);
    REQUIRE(read.ok());
    return read.value();
}

Package dish(const std::string& name, std::initializer_list<const char*> ingredients) {
    Package package;
    package.dish = name;
    for (const char* text : ingredients) {
        package.ingredients.push_back({quantity(text), IngredientDay::PackingDay, {}});
    }
    return package;
}

/// "total-low total-high unit item", for comparing.
void check_line(const ShoppingItem& line, Amount low, Amount high, Unit unit) {
    CHECK(line.total.low == low);
    CHECK(line.total.high == high);
    CHECK(line.total.unit == unit);
}

} // namespace

TEST_CASE("the same item in compatible units becomes one exact line") {
    struct Case {
        const char* first;
        const char* second;
        Amount low;
        Amount high;
        Unit unit;
    };
    const Case cases[] = {
        {"1.2 kg squash", "300 g squash", {3, 2}, {3, 2}, Unit::Kilogram},
        {"1/3 cup cider", "2/3 cup cider", {1, 1}, {1, 1}, Unit::Cup},
        {"1 cup stock", "2 tbsp stock", {9, 8}, {9, 8}, Unit::Cup}, // 16 tablespoons are a cup
        {"3-4 onions", "2 onions", {5, 1}, {6, 1}, Unit::Count},
        {"1 onion", "2 Onions", {3, 1}, {3, 1}, Unit::Count},
        {"1 Dose Tomaten", "2 Dosen Tomaten", {3, 1}, {3, 1}, Unit::Count},
        {"1 Zwiebel", "2 Zwiebeln", {3, 1}, {3, 1}, Unit::Count},
    };
    for (const auto& c : cases) {
        CAPTURE(c.first);
        const std::vector<Package> packages{dish("Stew", {c.first}), dish("Soup", {c.second})};
        const auto list = shopping(packages, Measures::Us);
        REQUIRE(list.for_the_day.size() == 1);
        check_line(list.for_the_day[0], c.low, c.high, c.unit);
        CHECK(list.for_the_day[0].dishes == std::vector<int>{1, 2});
        CHECK(list.for_the_day[0].total.as_written.empty());
    }
}

TEST_CASE("nothing is merged that should not be") {
    struct Case {
        const char* first;
        const char* second;
    };
    const Case cases[] = {
        {"200 g flour", "1 cup flour"},       // one weighs, the other measures
        {"200 g flour", "200 g plain flour"}, // perhaps another thing
        {"1 tbsp capers", "1 heaping tbsp capers"},
        {"3 onions", "200 g onions"},
        {"salt to taste", "5 g salt"},
        {"400 g celery", "400 g celeriac"},
        {"2 x 400 g tins tomatoes", "3 x 800 g tins tomatoes"},
        {"500 g flour (type 405)", "500 g flour (type 550)"},
        {"500 ml milk 3.5%", "500 ml milk 1.5 %"},
        {"500 ml milk 3.5%", "500 ml milk 35%"},
        {"1 tin (400 g) tomatoes", "1 tin (800 g) tomatoes"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.first);
        const std::vector<Package> packages{dish("Stew", {c.first, c.second})};
        CHECK(shopping(packages, Measures::Us).for_the_day.size() == 2);
    }
}

TEST_CASE("the same figures in an item tell nothing apart") {
    for (const auto& [first, second] :
         {std::pair{"2 x 400 g tins tomatoes", "3 x 400 g tins tomatoes"},
          {"500 ml milk 3.5%", "250 ml milk 3.5 %"},
          {"2 onions, chopped", "1 onion chopped"}}) {
        CAPTURE(std::string{first});
        const std::vector<Package> packages{dish("Stew", {first, second})};
        CHECK(shopping(packages, Measures::Us).for_the_day.size() == 1);
    }
}

TEST_CASE("cook day's list has what is kept out, and finishing ingredients once for each bag") {
    auto stew = dish("Stew", {"1 kg squash"});
    stew.bags = 3;
    stew.ingredients.push_back({quantity("600 ml cream"), IngredientDay::CookDay, {}});
    stew.finish.push_back({quantity("200 g baby spinach"), {}, {}, {}});
    stew.finish.push_back({quantity("a handful of parsley"), {}, {}, {}});
    const std::vector<Package> packages{stew};
    const auto list = shopping(packages, Measures::Us);
    REQUIRE(list.for_the_day.size() == 1);
    REQUIRE(list.for_cook_day.size() == 3);
    check_line(list.for_cook_day[0], {600, 1}, {600, 1}, Unit::Millilitre);
    check_line(list.for_cook_day[1], {600, 1}, {600, 1}, Unit::Gram);
    check_line(list.for_cook_day[2], {3, 1}, {3, 1}, Unit::Count);
}

TEST_CASE("an ingredient that stands alone keeps the cook's own words") {
    const std::vector<Package> packages{dish("Stew", {"½ cup red lentils", "salt to taste"}),
                                        dish("Soup", {"salt to taste"})};
    const auto list = shopping(packages, Measures::Us);
    REQUIRE(list.for_the_day.size() == 2);
    CHECK(list.for_the_day[0].total.as_written == "½ cup red lentils");
    CHECK(list.for_the_day[1].dishes == std::vector<int>{1, 2});
}
