// Safe temperatures, danger zones and cold limits against the agencies' tables.

#include "intake/storage_file.h"
#include "kitchen/cooking/safe_minimum.h"
#include "kitchen/measures/temperature_text.h"

#include <cmath>
#include <doctest/doctest.h>
#include <span>
#include <utility>

namespace temperatures_test {

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;

namespace {

using enum Matter;
using enum MinimumList;

/// Written down a second time from the publications named beside each list.
struct Published {
    Matter matter;
    int celsius;
    int fahrenheit;
    int rest_minutes;
};

void check_rows(MinimumList list, std::span<const Published> published) {
    std::size_t rows = 0;
    for (int i = 0; i <= static_cast<int>(last_matter); ++i) {
        rows += published_minimum(static_cast<Matter>(i), list) ? 1U : 0U;
    }
    CHECK(rows == published.size()); // and no row more: a new one needs its figure here
    for (const auto& row : published) {
        CAPTURE(static_cast<int>(row.matter));
        const auto minimum = published_minimum(row.matter, list);
        REQUIRE(minimum);
        CHECK(minimum->celsius == row.celsius);
        CHECK(minimum->fahrenheit == row.fahrenheit);
        CHECK(minimum->rest == minutes{row.rest_minutes});
        CHECK(minimum->time_counts == (list == Uk));
        CHECK(std::abs((row.fahrenheit - 32) / 1.8 - row.celsius) < 0.5); // one figure, two scales
        CHECK_FALSE(minimum->row.empty());
        CHECK_FALSE(minimum->source.empty());
        CHECK_FALSE(minimum->status.empty());
    }
}

Package package_of(std::vector<std::string> foods, std::string dish = "Dish") {
    Package package;
    package.dish = std::move(dish);
    package.food = std::move(foods);
    return package;
}

} // namespace

TEST_CASE("US minimums are those of FoodSafety.gov, Cook to a Safe Minimum Internal Temperature") {
    const Published rows[] = {
        {CookedDish, 74, 165, 0},                           // "Casseroles, meat and meatless"
        {Leftover, 74, 165, 0},   {ReadyToEat, 74, 165, 0}, // no row: "Leftovers"
        {CookedHam, 74, 165, 0}, // "Precooked ham (to reheat)": 140 °F from an inspected plant
        {EggDish, 71, 160, 0},   // "Egg dishes (such as frittata, quiche)"
        {RawEgg, 71, 160, 0},    // no row: "Egg dishes"
        {RawGround, 71, 160, 0}, // "Ground meat and sausage"
        {RawPoultry, 74, 165, 0}, {WholePoultry, 74, 165, 0},
        {RawCut, 63, 145, 3},     {Pork, 63, 145, 3},
        {BeefOrLamb, 63, 145, 3}, {Game, 71, 160, 0}, // USDA FSIS, Game from Farm to Table, 2011
        {RawFish, 63, 145, 0},    {RawShellfish, 63, 145, 0}, // FDA Food Code 3-401.11(A)(1)
        {Stuffed, 74, 165, 0}, // FDA Food Code 3-401.11(A)(3): stuffed fish, meat, pasta, poultry
        {Bacon, 63, 145, 3},   // no row: "Ham, raw"
    };
    check_rows(Us, rows);
}

TEST_CASE("Canadian minimums are those of Health Canada, Safe internal cooking temperatures") {
    const Published rows[] = {
        {CookedDish, 74, 165, 0}, {Leftover, 74, 165, 0},   {ReadyToEat, 74, 165, 0}, // hot dogs
        {CookedHam, 74, 165, 0},  {EggDish, 74, 165, 0},    {RawEgg, 74, 165, 0},
        {RawGround, 71, 160, 0},  {RawPoultry, 74, 165, 0}, {WholePoultry, 82, 180, 0},
        {RawCut, 71, 160, 0},     {Pork, 71, 160, 0},       {BeefOrLamb, 63, 145, 0},
        {Game, 74, 165, 0},       {RawFish, 70, 158, 0},    {RawShellfish, 74, 165, 0},
        {Bacon, 71, 160, 0},      {Stuffed, 74, 165, 0}, // "Others: stuffing, leftovers"
    };
    check_rows(Canada, rows);
}

TEST_CASE("UK minimums are 70 °C for 2 minutes: Food Standards Agency, Cooking your food") {
    const Published rows[] = {
        {CookedDish, 70, 158, 0}, {Leftover, 70, 158, 0},     {ReadyToEat, 70, 158, 0},
        {CookedHam, 70, 158, 0},  {EggDish, 70, 158, 0},      {RawEgg, 70, 158, 0},
        {RawGround, 70, 158, 0},  {RawPoultry, 70, 158, 0},   {WholePoultry, 70, 158, 0},
        {RawCut, 70, 158, 0},     {Pork, 70, 158, 0},         {Game, 70, 158, 0},
        {RawFish, 70, 158, 0},    {RawShellfish, 70, 158, 0}, {Bacon, 70, 158, 0},
        {Stuffed, 70, 158, 0},    {Vegetable, 70, 158, 0}, // whole cuts of beef and lamb may be
                                                           // pink: no figure
    };
    check_rows(Uk, rows);
}

TEST_CASE("times at a temperature are those the Food Standards Agency prints, and none between") {
    using std::chrono::seconds;
    const auto poultry = *published_minimum(RawPoultry, Uk);
    const std::pair<double, seconds> printed[] = {
        {65, minutes{10}}, {70, minutes{2}}, {75, seconds{30}}, {80, seconds{6}}};
    for (const auto& [celsius, time] : printed) {
        CAPTURE(celsius);
        CHECK(needed_hold(celsius) == time);
        CHECK(reaches(celsius, poultry, time));
        CHECK_FALSE(reaches(celsius, poultry, time - seconds{1}));
        CHECK_FALSE(reaches(celsius - 0.1, poultry, time)); // the next lower pair's time is asked
    }
    CHECK(needed_hold(69.9) == minutes{10});
    CHECK(needed_hold(74.9) == minutes{2});
    CHECK_FALSE(needed_hold(64.9));
    CHECK_FALSE(reaches(64.9, poultry, std::chrono::hours{10}));
    CHECK(reaches(70, poultry)); // the print then says for how long
    CHECK_FALSE(reaches(69, poultry));
}

TEST_CASE("time at a temperature counts for no publisher that does not print it") {
    for (const auto list : {Us, Canada}) {
        CHECK_FALSE(reaches(70, *published_minimum(RawPoultry, list), std::chrono::hours{1}));
    }
}

TEST_CASE("each list of storage life has its country's publisher") {
    for (const auto* list : {"us", "us-fsis", "us-fda", "us-older", "oregon", "practice"}) {
        CHECK(minimum_list(list) == Us);
    }
    CHECK(minimum_list("canada") == Canada);
    CHECK(minimum_list("newfoundland") == Canada);
    CHECK(minimum_list("uk") == Uk);
}

TEST_CASE("every class that is not bread, fruit or dairy has a minimum under every list") {
    for (const auto* list : {"us", "canada", "uk"}) {
        const auto table = intake::built_in_storage(list);
        for (const auto& known : table.classes) {
            CAPTURE(known.food);
            const auto minimum = safe_minimum(table, package_of({known.food}));
            CHECK(minimum.has_value() == (known.kind != FoodKind::Other));
        }
    }
}

TEST_CASE("what decides: the class, the words, the strictest of several, the vessel") {
    struct Case {
        const char* list;
        std::vector<std::string> foods;
        const char* dish;
        int celsius;
    };
    const Case cases[] = {
        {"us", {"raw sausage"}, "Fennel sausages", 71},
        {"us", {"raw sausage"}, "Turkey sausages", 74},
        {"us", {"raw sausage"}, "Putenbratwurst", 74},
        {"us", {"sausage"}, "Salchichas de pavo", 74},
        {"us", {"raw sausage"}, "Pork sausages in chicken stock", 71},
        {"us", {"quiche"}, "Leek quiche", 71},
        {"us", {"quiche"}, "Quiche with duck", 74},
        {"us", {"egg casserole"}, "Spinach strata", 74}, // casseroles, meatless too
        {"us", {"raw whole poultry"}, "Hen", 74},
        {"canada", {"raw whole poultry"}, "Hen", 82},
        {"canada", {"raw chops"}, "Chops", 71},
        {"canada", {"raw chops"}, "Lamb chops", 63},
        {"canada", {"raw chops"}, "Lamb and pork chops", 71},
        {"canada", {"raw roasts"}, "Rinderbraten", 63},
        {"canada", {"raw ground meat"}, "Venison burgers", 74},
        {"uk", {"raw roasts"}, "Shoulder of lamb", 63}, // the US figure stands in
        {"uk", {"raw roasts"}, "Shoulder", 70},
        {"us", {"blanched vegetables"}, "Runner beans", 70}, // only the UK publishes one
        {"us", {"raw chops", "soup or stew"}, "Chops in sauce", 74},
        {"us", {"quiche", "cooked poultry"}, "Quiche", 74},
    };
    for (const auto& c : cases) {
        CAPTURE(c.list);
        CAPTURE(c.dish);
        const auto minimum =
            safe_minimum(intake::built_in_storage(c.list), package_of(c.foods, c.dish));
        REQUIRE(minimum);
        CHECK(minimum->celsius == c.celsius);
    }
}

TEST_CASE("raw animal food in the microwave reaches 165 °F: FDA Food Code 3-401.12") {
    for (const auto* food : {"raw chops", "raw ground meat", "lean fish", "scallops", "bacon",
                             "beaten eggs", "raw game"}) {
        for (const auto* list : {"us", "canada", "uk"}) {
            CAPTURE(food);
            auto package = package_of({food});
            package.cook = Cook{};
            package.cook->vessel = Vessel::Microwave;
            CHECK(safe_minimum(intake::built_in_storage(list), package)->fahrenheit >= 165);
        }
    }
}

TEST_CASE("beside the minimum that counts stand the other publishers'") {
    const auto chops = counted_minimum(intake::built_in_storage("us"), package_of({"raw chops"}));
    REQUIRE(chops);
    CHECK(chops->counts.list == Us);
    REQUIRE(chops->beside.size() == 2);
    CHECK(chops->beside[0].celsius == 71);
    CHECK(chops->beside[1].celsius == 70);
}

TEST_CASE("160 °F is 71 °C to every publisher") {
    for (const auto measures : {Measures::Us, Measures::Metric}) {
        const auto text = published_text(160, TemperatureUse::SafeMinimum, {.measures = measures});
        CHECK(text.find("71 °C") != std::string::npos);
    }
}

TEST_CASE("published pairs of degrees come out as published") {
    struct Row {
        double fahrenheit;
        TemperatureUse use;
        const char* both;
    };
    using enum TemperatureUse;
    const Row rows[] = {
        {145, SafeMinimum, "145 °F (63 °C)"}, // FDA Food Code 3-401.11
        {160, SafeMinimum, "160 °F (71 °C)"}, // FoodSafety.gov; Health Canada
        {158, SafeMinimum, "158 °F (70 °C)"}, // Health Canada, fish
        {180, SafeMinimum, "180 °F (82 °C)"}, // Health Canada, whole poultry
        {165, SafeMinimum, "165 °F (74 °C)"}, // FDA Food Code 3-401.11, 3-403.11
        {140, ColdLimit, "140 °F (60 °C)"},   // USDA FSIS, Leftovers and Food Safety
        {40, ColdLimit, "40 °F (4 °C)"},      {90, ColdLimit, "90 °F (32 °C)"},
        {0, ColdLimit, "0 °F (-18 °C)"},    // USDA FSIS, Freezing and Food Safety
        {135, ColdLimit, "135 °F (57 °C)"}, // FDA Food Code 3-501.14
        {70, ColdLimit, "70 °F (21 °C)"},     {41, ColdLimit, "41 °F (5 °C)"},
    };
    for (const auto& row : rows) {
        CAPTURE(row.both);
        CHECK(published_text(row.fahrenheit, row.use, {}) == row.both);
    }
    CHECK(published_text(165, SafeMinimum, {.measures = Measures::Metric}) == "74 °C (165 °F)");
}

} // namespace temperatures_test
