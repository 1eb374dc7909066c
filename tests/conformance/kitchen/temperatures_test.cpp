// Safe temperatures, danger zones and cold limits against the agencies' tables.

#include "intake/storage_file.h"
#include "kitchen/safe_minimum.h"
#include "kitchen/temperature_text.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;

TEST_CASE("minimums are those of FoodSafety.gov, Safe Minimum Internal Temperatures") {
    struct Row {
        const char* food;
        double fahrenheit;
        double celsius_as_printed;
        int rest_minutes;
    };
    const Row rows[] = {
        {"raw steaks", 145, 62.8, 3},
        {"raw chops", 145, 62.8, 3},
        {"raw roasts", 145, 62.8, 3},
        {"raw fresh ham", 145, 62.8, 3},
        {"raw ground meat", 160, 71.1, 0},
        {"raw sausage", 160, 71.1, 0},
        {"raw whole poultry", 165, 73.9, 0},
        {"raw poultry pieces", 165, 73.9, 0},
        {"raw ground poultry", 165, 73.9, 0},
        {"poultry giblets", 165, 73.9, 0},
        {"quiche", 160, 71.1, 0},
        {"egg casserole", 160, 71.1, 0},
        {"lean fish", 145, 62.8, 0},
        {"fatty fish", 145, 62.8, 0},
        {"leftovers", 165, 73.9, 0},
        {"casserole", 165, 73.9, 0},
        {"soup or stew", 165, 73.9, 0},
    };
    const auto table = intake::built_in_storage("us");
    for (const auto& row : rows) {
        CAPTURE(row.food);
        const std::vector<std::string> foods{row.food};
        const auto minimum = safe_minimum(table, foods);
        REQUIRE(minimum);
        CHECK(minimum->celsius == doctest::Approx((row.fahrenheit - 32) / 1.8));
        CHECK(std::abs(minimum->celsius - row.celsius_as_printed) < 0.051);
        CHECK(minimum->rest == minutes{row.rest_minutes});
        CHECK(reaches(row.celsius_as_printed, *minimum));
    }
}

TEST_CASE("what agencies judge by the eye, or not at all, has no minimum") {
    const auto table = intake::built_in_storage("us");
    for (const auto* food : {"shrimp or crayfish", "scallops", "bread", "fruit", "butter"}) {
        CAPTURE(food);
        CHECK_FALSE(safe_minimum(kind_of(table, food), "us"));
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
