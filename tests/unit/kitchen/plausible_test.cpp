#include "kitchen/cautions/plausible.h"
#include "kitchen/plan.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <functional>
#include <set>

namespace plausible_test {

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;

namespace {

StorageTable table() {
    StorageTable t;
    t.rows = {{"stew", "us", months{2}, months{3}, "Stews", "a list", "read"},
              {"shrimp", "us", months{6}, months{18}, "Shrimp", "a list", "read"}};
    t.classes = {{"stew", FoodKind::CookedDish}};
    return t;
}

Package stew() {
    Package package;
    package.dish = "Barley stew";
    package.servings = 4;
    package.bags = 2;
    package.food = {"stew"};
    package.weight = Mass{1600};
    package.thickness = Length::millimetres(30);
    package.where = KeyPath{"package[1]"};
    return package;
}

/// What is reported of the package and, by its message, what is refused.
std::set<std::string> told(const std::function<void(Package&, Day&)>& change,
                           std::optional<Date> today = std::nullopt) {
    Day day{2026y / 10 / 17, "", std::nullopt, {}};
    auto package = stew();
    change(package, day);
    day.packages = {package};
    KitchenSettings settings;
    settings.today = today;
    Diagnostics faults;
    const auto planned = plan(day, table(), faults, settings);
    std::set<std::string> ids;
    for (const auto& one : planned.packages) {
        for (const auto& caution : one.cautions) {
            if (caution.level == CautionLevel::Report)
                ids.insert(caution.id);
        }
    }
    for (const auto& fault : faults)
        ids.insert("refused: " + fault.key.text());
    return ids;
}

using Ids = std::set<std::string>;
const auto nothing_changed = [](Package&, Day&) {};

} // namespace

TEST_CASE("each figure is taken at both ends of its bounds and asked about beyond them") {
    for (const auto& row : plausible_bounds()) {
        CAPTURE(static_cast<int>(row.figure));
        CHECK_FALSE(row.source.empty());
        CHECK(hold_against_bounds(row.figure, row.least) == Plausible::Yes);
        CHECK(hold_against_bounds(row.figure, row.most) == Plausible::Yes);
        CHECK(hold_against_bounds(row.figure, row.least - 0.01) == Plausible::TooSmall);
        CHECK(hold_against_bounds(row.figure, row.most + 0.01) == Plausible::TooLarge);
    }
}

TEST_CASE("the bounds are those that were settled, written down a second time") {
    // Common practice, no source; A2 by ISO 216:2007.
    using enum Figure;
    const Bounds rows[] = {
        {ServingWeight, 40, 1500, ""}, {BagArea, 40, 2494.8, ""},  {BagSteepness, 0, 1.25, ""},
        {Portions, 1, 500, ""},        {MadeDaysAgo, 0, 365, ""},  {UseByMonths, 0, 24, ""},
        {MadeMonthsAhead, 0, 24, ""},  {MadeMonthsAgo, 0, 36, ""},
    };
    REQUIRE(plausible_bounds().size() == std::size(rows));
    for (const auto& row : rows) {
        CAPTURE(static_cast<int>(row.figure));
        CHECK(bounds_of(row.figure).least == doctest::Approx(row.least));
        CHECK(bounds_of(row.figure).most == doctest::Approx(row.most));
    }
}

TEST_CASE("an A2 sheet is 420 mm by 594 mm") {
    // ISO 216:2007, A series.
    CHECK(bounds_of(Figure::BagArea).most == doctest::Approx(2494.8));
    CHECK(least_thickness(Mass{1200}) == Length::millimetres(5));
}

TEST_CASE("a likely dish is passed over in silence") {
    CHECK(told(nothing_changed).empty());
    CHECK(told(nothing_changed, 2026y / 10 / 17).empty());
    CHECK(told(nothing_changed, 2026y / 12 / 1).empty());
}

TEST_CASE("a weight that is not one of a serving is asked about at both ends") {
    const auto weighing = [](double grams) {
        return told([grams](Package& p, Day&) {
            p.weight = Mass{grams};
            p.thickness.reset();
        });
    };
    CHECK(weighing(159) == Ids{"serving-weight"});
    CHECK(weighing(160).empty());
    CHECK(weighing(6000).empty());
    CHECK(weighing(6004) == Ids{"serving-weight"});
}

TEST_CASE("a bag too thin for its weight is refused, one too thick is asked about") {
    const auto thick = [](double millimetres) {
        return told(
            [millimetres](Package& p, Day&) { p.thickness = Length::millimetres(millimetres); });
    };
    // 1.6 kg at 1050 kg/m³ are 1524 cm³: 6.1 mm over an A2 sheet, 38 cm over 40 cm².
    CHECK(thick(6.0) == Ids{"refused: package[1].thickness"});
    CHECK(thick(6.2).empty());
    CHECK(thick(130).empty());
    CHECK(told([](Package& p, Day&) {
              p.weight = Mass{400};
              p.thickness = Length::millimetres(100);
          }) == Ids{"bag-too-narrow"});
}

TEST_CASE("a bag that would be taller than wide is asked about, a box is not") {
    // 1.6 kg are 1524 cm³: a cube of 11.5 cm, and 13.4 cm high over 10.7 cm by 10.7 cm.
    const auto tall = [](Package& p, Day&) { p.thickness = Length::millimetres(300); };
    CHECK(told(tall) == Ids{"bag-on-edge"}); // "30 cm" for "30 mm"
    const auto high = [](double millimetres) {
        return told(
            [millimetres](Package& p, Day&) { p.thickness = Length::millimetres(millimetres); });
    };
    CHECK(high(133).empty());
    CHECK(high(135) == Ids{"bag-on-edge"});
    CHECK(told([](Package& p, Day&) {
              p.thickness = Length::millimetres(160);
              p.container = {Length::millimetres(100), Length::millimetres(100),
                             Length::millimetres(180), "10 × 10 × 18 cm"};
          }).empty());
}

TEST_CASE("a date set years ahead is refused, one beyond every list is asked about") {
    const auto by_hand = [](Date date, std::vector<std::string> food) {
        return told([&](Package& p, Day&) {
            p.food = std::move(food);
            p.use_by = date;
        });
    };
    CHECK(by_hand(2027y / 1 / 17, {"stew"}).empty());
    CHECK(by_hand(2027y / 1 / 18, {"stew"}) == Ids{"use-by-beyond-list"});
    CHECK(by_hand(2028y / 4 / 17, {}).empty());
    CHECK(by_hand(2028y / 4 / 18, {}) == Ids{"use-by-beyond-all-lists"});
    CHECK(by_hand(2028y / 10 / 17, {}) == Ids{"use-by-beyond-all-lists"});
    CHECK(by_hand(2028y / 10 / 18, {}) == Ids{"refused: package[1].use_by"});
    CHECK(by_hand(2032y / 1 / 17, {"stew"}) == Ids{"refused: package[1].use_by"});
}

TEST_CASE("dates are held against today, where that is known") {
    CHECK(told(nothing_changed, 2026y / 10 / 16) == Ids{"made-in-future"});
    CHECK(told(nothing_changed, 2026y / 12 / 17).empty());
    CHECK(told(nothing_changed, 2026y / 12 / 18) == Ids{"already-past-best"});
    const auto for_years = [](Package& p, Day&) {
        p.use_by = 2027y / 12 / 1;
        p.food.clear();
    };
    CHECK(told(for_years, 2027y / 10 / 17).empty());
    CHECK(told(for_years, 2027y / 10 / 18) == Ids{"made-long-ago"});
    CHECK(told(for_years, 2027y / 12 / 2) == Ids{"already-past-use-by"});
}

TEST_CASE("a day years away from today is refused, ahead sooner than back") {
    CHECK(told(nothing_changed, 2024y / 10 / 17) == Ids{"made-in-future"});
    CHECK(told(nothing_changed, 2024y / 10 / 16) == Ids{"refused: day.made"});
    CHECK(told(nothing_changed, 2029y / 10 / 17) == Ids{"already-past-best"});
    CHECK(told(nothing_changed, 2029y / 10 / 18) == Ids{"refused: day.made"});
    const auto long_ago = [](Package& p, Day&) { p.made = 2016y / 1 / 5; };
    CHECK(told(long_ago, 2026y / 10 / 18) == Ids{"refused: package[1].made"});
}

TEST_CASE("a dish made on another day is held against the packing day") {
    CHECK(told([](Package& p, Day&) { p.made = 2026y / 10 / 18; }) == Ids{"made-after-packing"});
    CHECK(told([](Package& p, Day&) { p.made = 2026y / 10 / 15; }) == Ids{"chilled-since-made"});
    CHECK(told([](Package& p, Day&) {
              p.made = 2026y / 10 / 15;
              p.days_refrigerated = 2;
          }).empty());
}

TEST_CASE("more portions of one dish than a kitchen packs are asked about") {
    const auto in_bags = [](int bags) { return told([bags](Package& p, Day&) { p.bags = bags; }); };
    CHECK(in_bags(125).empty());
    CHECK(in_bags(126) == Ids{"many-portions"});
}

TEST_CASE(
    "days of waiting for the freezer count among those before freezing, the strictest for a dish") {
    auto t = table();
    t.before_freezing = {{"stew", "us", days{3}, days{4}, "Stews", "a list", "read"}};
    t.after_thawing = {
        {FoodKind::CookedDish, "us", days{3}, days{4}, true, "Leftovers", "a list", "read"}};
    auto package = stew();
    package.bags = 3;
    Day day{2026y / 10 / 17, "", 40.0, {package}}; // 1.9 kg a day: a bag at a time
    Diagnostics faults;
    const auto planned = plan(day, t, faults);
    REQUIRE(faults.empty());
    const auto& one = planned.packages.at(0);
    CHECK(one.bags[0].waits == days{0});
    CHECK(one.bags[2].waits == days{2});
    CHECK(one.package.days_refrigerated == 2);
    CHECK(one.after_thawing->low == days{1});
    day.packages[0].made = 2026y / 10 / 16; // asked about all the same, though the wait counts it
    const auto since = plan(day, t, faults);
    CHECK(since.packages.at(0).package.days_refrigerated == 3); // one before, two of waiting
    CHECK(std::ranges::any_of(since.packages.at(0).cautions, [](const Caution& caution) {
        return caution.id == "chilled-since-made";
    }));
    day.packages[0].made.reset();
    day.freezer_litres = 400.0;
    const auto at_once = plan(day, t, faults);
    CHECK(at_once.packages.at(0).after_thawing->low == days{3});
}

TEST_CASE("a dish keeps its number of the day where its bags wait for the freezer") {
    auto t = table();
    t.before_freezing = {{"stew", "us", days{3}, days{4}, "Stews", "a list", "read"}};
    auto other = stew();
    other.dish = "Pumpkin stew";
    const Day day{2026y / 10 / 17, "", 40.0, {stew(), other}}; // 1.9 kg a day: a bag at a time
    Diagnostics faults;
    const auto planned = plan(day, t, faults);
    REQUIRE(planned.packages.size() == 2);
    const auto waits = [](const PlannedPackage& dish) {
        return std::ranges::any_of(dish.bags, [](const Bag& bag) { return bag.waits > days{0}; });
    };
    REQUIRE(std::ranges::any_of(planned.packages, waits));
    CHECK(planned.packages[0].number == 1);
    CHECK(planned.packages[1].number == 2);
}

} // namespace plausible_test
