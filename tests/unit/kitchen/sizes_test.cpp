// A dish in several sizes: amounts, containers, numbers, ids and what is bought.

#include "kitchen/measures/container_text.h"
#include "kitchen/measures/proportion.h"
#include "kitchen/plan.h"
#include "kitchen/shopping.h"

#include <doctest/doctest.h>
#include <set>

namespace sizes_test {

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;

namespace {

Quantity quantity(std::string_view text) {
    const auto read = parse_quantity(text);
    REQUIRE(read.ok());
    return read.value();
}

StorageTable table() {
    StorageTable table;
    table.rows.push_back({"soup or stew", "us", months{2}, months{3}, "soup", "a list", "read"});
    return table;
}

/// A stew in bags for six and for two, in this order.
std::vector<Package> stew_in_sizes() {
    Package package;
    package.dish = "Lentil and quince stew";
    package.food = {"soup or stew"};
    package.where = KeyPath{"package[1]"};
    package.ingredients = {{quantity("1.2 kg brown lentils"), IngredientDay::PackingDay, {}}};
    package.finish = {{quantity("300 ml stock"), {}, {}, {}}};
    std::vector<Package> sizes(2, package);
    int position = 0;
    for (auto& size : sizes) {
        size.servings = position == 0 ? 6 : 2;
        size.bags = position == 0 ? 3 : 4;
        size.size = {position, size.servings, 26, KeyPath{"package[1].size[1]"}};
        ++position;
    }
    sizes[1].finish[0].add = quantity("100 ml stock");
    return sizes;
}

Day day_of(std::vector<Package> packages) {
    return {2026y / 10 / 24, "Orchard house", std::nullopt, std::move(packages)};
}

} // namespace

TEST_CASE("amounts in proportion are as round as kitchens measure") {
    struct Case {
        const char* written;
        Amount factor;
        const char* expected;
    };
    const Case cases[] = {
        {"1 l vegetable stock", {1, 3}, "330 ml vegetable stock"},
        {"300 g rice", {1, 3}, "100 g rice"},
        {"250 g rice", {2, 3}, "165 g rice"},
        {"3 onions", {1, 3}, "1 onions"},
        {"2 tbsp mustard", {1, 3}, "⅔ tbsp mustard"},
        {"1 tsp salt", {1, 4}, "¼ tsp salt"},
        {"1 tbsp vinegar", {1, 4}, "¾ tsp vinegar"}, // no spoon holds a quarter of one
        {"1-2 tbsp oil", {1, 2}, "½–1 tbsp oil"},
        {"150 ml cream", {1, 4}, "40 ml cream"}, // no jug shows 38 ml
        {"150 g cream", {1, 4}, "38 g cream"},
        {"75 ml oil", {1, 3}, "25 ml oil"},
        {"70 ml oil", {1, 3}, "23 ml oil"},
        {"1 cup cream", {3, 2}, "1½ cups cream"},
        {"1 cup cream", {1, 6}, "2¾ tbsp cream"}, // ⅛ cup would be a quarter less
        {"1 cup cream", {1, 4}, "¼ cup cream"},
        {"1 cup cream", {1, 48}, "1 tsp cream"},
        {"1 lb carrots", {1, 6}, "2¾ oz carrots"},
        {"5 g salt", {1, 6}, "0.8 g salt"},
        {"8 g yeast", {1, 3}, "2.5 g yeast"},
        {"200-300 g spinach", {1, 2}, "100–150 g spinach"},
        {"400 g rice", {3, 1}, "1.2 kg rice"},
        {"salt to taste", {1, 3}, "salt to taste"},
        {"1 l milk", {1, 1}, "1 l milk"},
        {"0.3 l cider", {2, 1}, "0.6 l cider"}, // whole bags: as exact as what was written
        {"333 g rice", {3, 1}, "999 g rice"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.written);
        CHECK(in_proportion(quantity(c.written), c.factor).as_written == c.expected);
    }
}

TEST_CASE("a container is read with one unit or several") {
    struct Case {
        const char* text;
        double width;
        double length;
    };
    const Case cases[] = {{"20 x 28 cm", 200, 280},
                          {"20 cm × 28 cm", 200, 280},
                          {"8 x 10 in", 203.2, 254},
                          {"8 1/2 by 11 in", 215.9, 279.4},
                          {"20 X 15 x 5 cm", 200, 150}};
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto read = parse_container(c.text);
        REQUIRE(read.ok());
        CHECK(read.value().width.in_millimetres() == doctest::Approx(c.width));
        CHECK(read.value().length.in_millimetres() == doctest::Approx(c.length));
    }
    CHECK(parse_container("20 X 15 x 5 cm").value().height->in_millimetres() ==
          doctest::Approx(50));
    CHECK(parse_container("20x28cm").value().as_written == "20 × 28cm");
    CHECK(parse_container("  20  x 28 cm ").value().as_written == "20 × 28 cm");
    CHECK(parse_container("20 cm x  28 bells").fault().offset == 12); // where the unit stands
    for (const auto* wrong :
         {"", "20 cm", "20 x 28", "20 x x 28 cm", "a x b cm", "1 x 2 x 3 x 4 cm"}) {
        CAPTURE(wrong);
        CHECK_FALSE(parse_container(wrong).ok());
    }
}

TEST_CASE("all sizes of a dish have its number, and the next dish the next") {
    auto packages = stew_in_sizes();
    Package soup = packages.front();
    soup.size.reset();
    soup.dish = "Pear soup";
    packages.push_back(soup);
    Diagnostics faults;
    const auto planned = plan(day_of(packages), table(), faults);
    CHECK(faults.empty());
    REQUIRE(planned.packages.size() == 3);
    CHECK(planned.packages[0].number == 1);
    CHECK(planned.packages[1].number == 1);
    CHECK(planned.packages[2].number == 2);
    const auto dishes = dishes_of(planned);
    REQUIRE(dishes.size() == 2);
    CHECK(dishes[0].size() == 2);
    CHECK(dishes[1].size() == 1);
}

TEST_CASE("bags count within their size, and no two have one id") {
    Diagnostics faults;
    const auto planned = plan(day_of(stew_in_sizes()), table(), faults);
    std::set<std::string> ids;
    for (const auto& package : planned.packages) {
        CHECK(package.bags.front().number == 1);
        CHECK(package.bags.back().of == package.package.bags);
        for (const auto& bag : package.bags) {
            ids.insert(bag.id);
        }
    }
    CHECK(ids.size() == 7);
}

TEST_CASE("a bag more of one size, or another size, changes no id of the others") {
    Diagnostics faults;
    const auto before = plan(day_of(stew_in_sizes()), table(), faults);
    auto packages = stew_in_sizes();
    packages[0].bags = 5;
    auto family = packages[0];
    family.servings = 8;
    family.size->name = 8;
    packages.insert(packages.begin(), family);
    const auto after = plan(day_of(packages), table(), faults);
    for (std::size_t bag = 0; bag < 3; ++bag) {
        CHECK(after.packages[1].bags[bag].id == before.packages[0].bags[bag].id);
        CHECK(after.packages[2].bags[bag].id == before.packages[1].bags[bag].id);
    }
}

TEST_CASE("a dish without sizes has the ids that it always had") {
    // As printed by the program before there were sizes.
    CHECK(bag_id({"Squash and red lentil stew", 2026y / 10 / 17, 1,
                  Batch{.kitchen_number = 0, .kitchen = "Orchard house"}}) ==
          bag_id({"Squash and red lentil stew", 2026y / 10 / 17, 1, {0, "Orchard house", 1, 0}}));
    CHECK(bag_id({"Chili", 2026y / 10 / 17, 1}) !=
          bag_id({"Chili", 2026y / 10 / 17, 1, {0, "", 1, 6}}));
}

TEST_CASE("ingredients are bought once for all sizes, what is added for each bag") {
    const auto list = shopping(stew_in_sizes(), Measures::Metric);
    REQUIRE(list.for_the_day.size() == 1);
    CHECK(list.for_the_day[0].total.low == Amount{6, 5});
    REQUIRE(list.for_cook_day.size() == 1);
    CHECK(list.for_cook_day[0].total.low == Amount{1300, 1}); // 3 × 300 ml and 4 × 100 ml
}

} // namespace sizes_test
