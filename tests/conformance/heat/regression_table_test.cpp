// A table of freezing and thawing times that was computed once, with another program, from an
// enthalpy finite-difference model and from the three formulas. It holds the model under
// tests/ and the formulas under src/ to the same figures.

#include "conformance/heat/enthalpy_model.h"
#include "kitchen/heat/freezing_time.h"
#include "kitchen/heat/plank.h"
#include "kitchen/heat/thaw_time.h"

#include <doctest/doctest.h>

namespace regression_table_test {

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

constexpr int cells = 8;

struct Figures {
    double model;
    double formula;
    double plank;
};

struct Row {
    double millimetres;
    Figures freeze;        // +4 °C to a core of −15 °C, in air of −18 °C, h = 8
    Figures thaw;          // −18 °C to a core of 0 °C, in a refrigerator of 4 °C, h = 6
    double thaw_at_two;    // to a core of −1 °C, in a refrigerator of 2 °C: model alone
    Figures thaw_in_water; // 10 °C, h = 100
};

constexpr Row rows[] = {
    {20, {8.0, 7.9, 5.7}, {17.3, 17.0, 23.4}, 23.9, {0.93, 0.92, 1.27}},
    {25, {10.1, 9.9, 7.1}, {21.8, 21.4, 29.7}, 30.0, {1.29, 1.29, 1.78}},
    {40, {16.4, 16.2, 11.6}, {35.6, 35.4, 49.5}, 49.1, {2.71, 2.72, 3.81}},
    {50, {20.8, 20.5, 14.7}, {45.2, 45.1, 63.6}, 62.3, {3.92, 3.95, 5.55}},
    {75, {32.2, 31.7, 22.8}, {70.6, 71.1, 101.6}, 97.1, {7.92, 7.97, 11.30}},
};

double model(const Row& row, const oracle::Treatment& treatment) {
    static const oracle::Model moist;
    return moist.hours_until({.thickness = row.millimetres / 1000.0}, treatment, cells);
}

double plain_plank(const Row& row, Surroundings medium, double conductivity) {
    const auto food = moist_dish();
    const double difference = medium.celsius - food.freezing_point;
    return plank_time({.heat = food.density * food.latent_heat,
                       .difference = difference < 0.0 ? -difference : difference,
                       .thickness = row.millimetres / 1000.0,
                       .coefficient = medium.coefficient,
                       .conductivity = conductivity},
                      plank_slab)
               .count() /
           3600.0;
}

double hours(const Result<Seconds, HeatFault>& time) {
    REQUIRE(time.ok());
    return time.value().count() / 3600.0;
}

constexpr double percent = 0.01;

} // namespace

TEST_CASE("the enthalpy model gives the table's times again") {
    for (const auto& row : rows) {
        CAPTURE(row.millimetres);
        CHECK(model(row, {4, -18, 8, -15}) == doctest::Approx(row.freeze.model).epsilon(percent));
        CHECK(model(row, {-18, 4, 6, 0}) == doctest::Approx(row.thaw.model).epsilon(percent));
        CHECK(model(row, {-18, 2, 6, -1}) == doctest::Approx(row.thaw_at_two).epsilon(percent));
        CHECK(model(row, {-18, 10, 100, 0}) ==
              doctest::Approx(row.thaw_in_water.model).epsilon(1.5 * percent));
    }
}

TEST_CASE("Pham 1986 and Cleland 1986 give the table's times again") {
    const auto food = moist_dish();
    for (const auto& row : rows) {
        CAPTURE(row.millimetres);
        const Length thickness = Length::millimetres(row.millimetres);
        CHECK(hours(freezing_time(food, thickness, {-18, 8}, {4, -15})) ==
              doctest::Approx(row.freeze.formula).epsilon(percent));
        CHECK(hours(thaw_time(food, thickness, {4, 6}, -18)) ==
              doctest::Approx(row.thaw.formula).epsilon(percent));
        CHECK(hours(thaw_time(food, thickness, {10, 100}, -18)) ==
              doctest::Approx(row.thaw_in_water.formula).epsilon(percent));
    }
}

TEST_CASE("plain Plank gives the table's times again, and is the worse for it") {
    const auto food = moist_dish();
    for (const auto& row : rows) {
        CAPTURE(row.millimetres);
        const double freeze = plain_plank(row, {-18, 8}, food.conductivity_frozen);
        const double thaw = plain_plank(row, {4, 6}, food.conductivity_unfrozen);
        const double water = plain_plank(row, {10, 100}, food.conductivity_unfrozen);
        CHECK(freeze == doctest::Approx(row.freeze.plank).epsilon(percent));
        CHECK(thaw == doctest::Approx(row.thaw.plank).epsilon(percent));
        CHECK(water == doctest::Approx(row.thaw_in_water.plank).epsilon(percent));
        CHECK(freeze < 0.75 * row.freeze.model);
        CHECK(thaw > 1.30 * row.thaw.model);
        CHECK(water > 1.30 * row.thaw_in_water.model);
    }
}

} // namespace regression_table_test
