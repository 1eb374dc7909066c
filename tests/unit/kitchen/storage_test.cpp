#include "kitchen/storage/fridge_life.h"
#include "kitchen/storage/storage.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace storage_test {

using namespace thawslip::kitchen;
using namespace std::chrono;

namespace {

StorageTable table(std::string rule_set = "us") {
    StorageTable t;
    t.rule_set = std::move(rule_set);
    const auto row = [&](const char* food, const char* list, int low, int high) {
        t.rows.push_back({food, list, months{low}, months{high}, food, "a list", "read"});
    };
    row("soup or stew", "us", 2, 3);
    row("soup or stew", "canada", 4, 4);
    row("casserole", "us-fsis", 2, 3);
    row("casserole", "oregon", 4, 6);
    row("cooked poultry", "us", 2, 6);
    row("bread", "oregon", 2, 3);
    row("raw ground meat", "us", 3, 4);
    row("bacon", "us", 1, 1);
    t.classes = {{"soup or stew", FoodKind::CookedDish},
                 {"cooked poultry", FoodKind::Leftover},
                 {"raw ground meat", FoodKind::RawGround}};
    const auto fridge = [&](const char* food, const char* list, int low, int high) {
        t.before_freezing.push_back({food, list, days{low}, days{high}, food, "a list", "read"});
    };
    fridge("soup or stew", "us", 3, 4);
    fridge("soup or stew", "uk", 2, 2);
    fridge("raw ground meat", "us", 1, 2);
    const auto thawed = [&](std::optional<FoodKind> kind, const char* list, int low, int high,
                            bool count) {
        t.after_thawing.push_back(
            {kind, list, days{low}, days{high}, count, "a row", "a list", "read"});
    };
    thawed(FoodKind::CookedDish, "us", 3, 4, true);
    thawed(FoodKind::RawGround, "us", 1, 2, true);
    thawed(std::nullopt, "uk", 1, 1, false);
    return t;
}

using Names = std::vector<std::string>;

std::string list_of_shortest(const StorageTable& t, Names foods) {
    const auto row = shortest_lived(t, foods);
    return row ? row->food + " (" + row->rule_set + ")" : "none";
}

} // namespace

TEST_CASE("kinds are listed once, in the table's order") {
    CHECK(storage_classes(table()) == Names{"soup or stew", "casserole", "cooked poultry", "bread",
                                            "raw ground meat", "bacon"});
}

TEST_CASE("the chosen list is asked first, and another one shows by its name") {
    CHECK(find_storage(table(), "soup or stew")->low == months{2});
    CHECK(find_storage(table("canada"), "soup or stew")->low == months{4});
    CHECK(find_storage(table("canada"), "casserole")->rule_set == "us-fsis");
    CHECK(find_storage(table("oregon"), "casserole")->rule_set == "oregon");
    CHECK(find_storage(table(), "Soup or Stew")->low == months{2});
    CHECK_FALSE(find_storage(table(), "gravel"));
    CHECK_FALSE(find_storage(table(), ""));
}

TEST_CASE("a mixed dish keeps as long as what keeps shortest in it") {
    CHECK(list_of_shortest(table(), {"soup or stew", "bacon"}) == "bacon (us)");
    CHECK(list_of_shortest(table(), {"bacon", "soup or stew"}) == "bacon (us)");
    CHECK(list_of_shortest(table(), {"cooked poultry", "soup or stew"}) == "soup or stew (us)");
    CHECK(list_of_shortest(table(), {"casserole", "soup or stew"}) == "casserole (us-fsis)");
    CHECK(list_of_shortest(table(), {"soup or stew", "gravel"}) == "none");
    CHECK(list_of_shortest(table(), {}) == "none");
}

TEST_CASE("days in the refrigerator before freezing are taken off those after thawing") {
    struct Case {
        const char* rule_set;
        Names foods;
        int before;
        int low;
        int high;
    };
    const Case cases[] = {
        {"us", {"soup or stew"}, 0, 3, 4},
        {"us", {"soup or stew"}, 2, 1, 2},
        {"us", {"soup or stew"}, 3, 0, 1},
        {"us", {"soup or stew"}, 9, 0, 0},
        {"us", {"soup or stew", "raw ground meat"}, 0, 1, 2},
        {"us", {"bread", "raw ground meat"}, 0, 1, 2},
        // The UK's 24 hours hold however long it was chilled before, and for any food.
        {"uk", {"soup or stew"}, 2, 1, 1},
        {"uk", {"bread"}, 0, 1, 1},
        // A list without such rows borrows them from another, but never the UK's catch-all.
        {"canada", {"soup or stew"}, 0, 3, 4},
    };
    for (const auto& c : cases) {
        CAPTURE(c.rule_set);
        CAPTURE(c.before);
        const auto left = days_left_after_thawing(table(c.rule_set), c.foods, days{c.before});
        REQUIRE(left);
        CHECK(left->low == days{c.low});
        CHECK(left->high == days{c.high});
    }
    CHECK_FALSE(days_left_after_thawing(table(), Names{"bread"}, days{0}));
    CHECK_FALSE(days_left_after_thawing(table(), Names{}, days{0}));
}

TEST_CASE("thawed food keeps no longer than it would have fresh") {
    auto short_lived = table();
    short_lived.classes.push_back({"oyster stew", FoodKind::CookedDish});
    short_lived.before_freezing.push_back(
        {"oyster stew", "us", days{1}, days{2}, "Oysters", "", ""});
    const auto left = days_left_after_thawing(short_lived, Names{"oyster stew"}, days{0});
    REQUIRE(left);
    CHECK(left->low == days{1});
    CHECK(left->high == days{2});
    CHECK(left->row.low == days{3});
    REQUIRE(left->capped_by);
    CHECK(left->capped_by->row == "Oysters");
    // The days before freezing come off what is left of the shorter life.
    CHECK(days_left_after_thawing(short_lived, Names{"oyster stew"}, days{1})->low == days{0});
    CHECK_FALSE(days_left_after_thawing(short_lived, Names{"soup or stew"}, days{0})->capped_by);
    // Of several the one with the fewest days counts, wherever they come from.
    CHECK(
        days_left_after_thawing(short_lived, Names{"soup or stew", "oyster stew"}, days{0})->low ==
        days{1});
}

TEST_CASE("keeping time before freezing is that of the class that keeps shortest") {
    CHECK(shortest_fridge_life(table(), Names{"soup or stew", "bread"})->low == days{3});
    CHECK(shortest_fridge_life(table(), Names{"soup or stew", "raw ground meat"})->high == days{2});
    CHECK(shortest_fridge_life(table("uk"), Names{"soup or stew"})->high == days{2});
    CHECK_FALSE(shortest_fridge_life(table(), Names{"bread"}));
}

TEST_CASE("the longest keeping time before freezing is that of any list, whatever the order") {
    CHECK(longest_fridge_life(table(), "soup or stew") == days{4}); // of 4 and 2
    CHECK(longest_fridge_life(table("uk"), "Soup or stew") == days{4});
    auto other_way_round = table();
    std::ranges::reverse(other_way_round.before_freezing);
    CHECK(longest_fridge_life(other_way_round, "soup or stew") == days{4});
    CHECK(longest_fridge_life(table(), "raw ground meat") == days{2});
    CHECK_FALSE(longest_fridge_life(table(), "bread"));
}

} // namespace storage_test
