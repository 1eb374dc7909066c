#include "kitchen/storage/chilled_wait.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;

namespace {

constexpr Date packing_day = 2026y / 10 / 17;

StorageTable table() {
    StorageTable t;
    const auto add = [&](const char* food, FoodKind kind, int low, int high) {
        t.classes.push_back({food, kind});
        if (high > 0)
            t.before_freezing.push_back({food, "us", days{low}, days{high}, food, "a list", ""});
    };
    add("stew", FoodKind::CookedDish, 3, 4);
    add("raw mince", FoodKind::RawGround, 1, 2);
    add("raw mussels", FoodKind::RawShellfish, 0, 1);
    add("raw octopus", FoodKind::RawShellfish, 0, 0); // no row
    add("bacon", FoodKind::Other, 7, 7);
    add("bread", FoodKind::Other, 0, 0); // no row
    t.after_thawing.push_back(
        {FoodKind::CookedDish, "us", days{3}, days{4}, true, "Leftovers", "a list", ""});
    return t;
}

struct Case {
    std::vector<std::string> food;
    int spent;
    int made_days_ago;
    int may_wait;
};

} // namespace

TEST_CASE("a bag may wait for the low end of its list, less the days it has spent") {
    const std::vector<Case> cases = {
        {{"stew"}, 0, 0, 3},
        {{"stew"}, 2, 0, 1},
        {{"stew"}, 3, 0, 0},
        {{"stew"}, 9, 0, 0},
        {{"stew"}, 0, 2, 1}, // made two days earlier: nothing says it was frozen since
        {{"stew"}, 1, 3, 0},
        {{"raw mince"}, 0, 0, 1},
        {{"raw mince"}, 1, 1, 0},
        {{"raw mussels"}, 0, 0, 0},
        {{"stew", "raw mince"}, 0, 0, 1}, // the shortest-lived counts
        {{"stew", "bread"}, 0, 0, 3},     // bread has no row and needs none here
        {{"stew", "raw octopus"}, 0, 0, 1},
        {{"bacon"}, 0, 0, 7},
        {{"bacon"}, 5, 0, 2},
        {{"bread"}, 0, 0, 7}, // it does not spoil in a few days
        {{"raw octopus"}, 0, 0, 1},
        {{}, 0, 0, 1}, // no class: it may be raw
        {{}, 1, 0, 0},
    };
    for (const auto& c : cases) {
        CAPTURE(c.may_wait);
        CAPTURE(c.food.empty() ? std::string{} : c.food.front());
        Package package;
        package.food = c.food;
        package.days_refrigerated = c.spent;
        if (c.made_days_ago > 0)
            package.made = add_days(packing_day, -days{c.made_days_ago});
        CHECK(may_wait_chilled(package, packing_day, table(), {}) == days{c.may_wait});
    }
}

TEST_CASE("nothing waits in a refrigerator that is too warm for the lists") {
    Package package;
    package.food = {"stew"};
    ThawSettings warm;
    warm.refrigerator.celsius = 5.0;
    CHECK(may_wait_chilled(package, packing_day, table(), warm) == days{3});
    warm.refrigerator.celsius = 6.0;
    CHECK(may_wait_chilled(package, packing_day, table(), warm) == days{0});
}

TEST_CASE("what has thawed keeps by the same days, and not in a refrigerator that is too warm") {
    Package package;
    package.food = {"stew"};
    ThawSettings settings;
    const auto low = [&] { return keeps_thawed(package, packing_day, table(), settings)->low; };
    CHECK(low() == days{3});
    package.made = add_days(packing_day, -days{2}); // nothing says that it was frozen since
    CHECK(low() == days{1});
    package.made.reset();
    settings.refrigerator.celsius = 6.0;
    CHECK(low() == days{0});
    package.thaw.method = ThawMethod::ColdWater;
    CHECK_FALSE(keeps_thawed(package, packing_day, table(), settings));
}
