// The enthalpy model bounds what src/ says of bags from 15 to 80 mm; first, that the model itself
// can be believed.

#include "conformance/heat/soup_in_model.h"
#include "kitchen/heat/freezing_time.h"
#include "kitchen/heat/thaw_lead.h"
#include "kitchen/heat/thaw_time.h"

#include <algorithm>
#include <chrono>
#include <cmath>
#include <doctest/doctest.h>
#include <utility>

namespace enthalpy_model_test {

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

constexpr int cells = 6;
const oracle::Model moist;
constexpr double thicknesses[] = {15, 20, 25, 30, 35, 40, 50, 60, 70, 80};

double model_hours(double millimetres, const oracle::Treatment& treatment) {
    return moist.hours_until({.thickness = millimetres / 1000.0}, treatment, cells);
}

double formula_hours(double millimetres, Surroundings medium) {
    const auto time = thaw_time(moist_dish(), Length::millimetres(millimetres), medium, -18);
    REQUIRE(time.ok());
    return time.value().count() / 3600.0;
}

double in_hours(std::chrono::duration<double, std::ratio<3600>> time) {
    return time.count();
}

struct Medium {
    const char* what;
    Surroundings surroundings;
    double shortest; // formula / model may lie from here …
    double longest;  // … to here
};

constexpr Medium media[] = {
    {"refrigerator at 2 °C", {2, 6}, 1.00, 1.12},
    {"refrigerator at 3 °C", {3, 6}, 0.97, 1.05},
    {"refrigerator at 4 °C", {4, 6}, 0.96, 1.03},
    {"refrigerator at 4 °C, less air", {4, 5}, 0.96, 1.03},
    {"refrigerator at 4 °C, more air", {4, 7}, 0.96, 1.03},
    {"refrigerator at 7 °C", {7, 6}, 0.90, 1.00},
    {"water at 10 °C", {10, 100}, 0.96, 1.04},
    {"water at 20 °C", {20, 100}, 0.94, 1.10},
};

} // namespace

TEST_CASE("the model's heat between 0 and −10 °C is the 229 kJ/kg of the property set") {
    CHECK(-oracle::enthalpy({}, -10.0) == doctest::Approx(229e3).epsilon(0.005));
    CHECK(-oracle::enthalpy({}, -10.0) ==
          doctest::Approx(moist_dish().enthalpy_0_to_minus_10).epsilon(1e-9));
}

TEST_CASE("the model cools a slab without ice as the exact series says") {
    // Heisler: one term of the series for a slab, ζ tan ζ = Bi, at Fo well above 0.2.
    oracle::Food dry;
    dry.freezing_point = -40.0;
    const double half = 0.02;
    const double biot = 50.0 * half / dry.conductivity_unfrozen; // 2
    const double zeta = 1.0769; // root of ζ tan ζ = 2; Incropera and DeWitt, table 5.1, C₁ = 1.1785
    CHECK(zeta * std::tan(zeta) == doctest::Approx(biot).epsilon(0.001));
    const double diffusivity = dry.conductivity_unfrozen / (dry.density * dry.heat_unfrozen);
    const double fourier = std::log(1.1785 / 0.1) / (zeta * zeta);
    const double exact = fourier * half * half / diffusivity / 3600.0;
    const double seen = oracle::Model{dry}.hours_until({.thickness = 2 * half}, {30, 0, 50, 3}, 12);
    CHECK(seen == doctest::Approx(exact).epsilon(0.01));
}

TEST_CASE("the model hardly changes with a finer grid") {
    const oracle::Treatment thaw{-18, 4, 6, 0};
    const double coarse = moist.hours_until({.thickness = 0.03}, thaw, cells);
    const double fine = moist.hours_until({.thickness = 0.03}, thaw, 2 * cells);
    CHECK(coarse == doctest::Approx(fine).epsilon(0.005));
}

TEST_CASE("thawing times from 15 to 80 mm stay within the stated distance of the model") {
    for (const auto& medium : media) {
        for (const double millimetres : thicknesses) {
            INFO(medium.what);
            CAPTURE(millimetres);
            const double ratio = formula_hours(millimetres, medium.surroundings) /
                                 model_hours(millimetres, {-18, medium.surroundings.celsius,
                                                           medium.surroundings.coefficient, 0});
            CHECK(ratio >= medium.shortest);
            CHECK(ratio <= medium.longest);
        }
    }
}

TEST_CASE("freezing times from 15 to 80 mm stay within 3 % of the model") {
    for (const double coefficient : {8.0, 15.0}) {
        for (const double millimetres : thicknesses) {
            CAPTURE(coefficient);
            CAPTURE(millimetres);
            const auto time = freezing_time(moist_dish(), Length::millimetres(millimetres),
                                            {-18, coefficient}, {4, -15});
            REQUIRE(time.ok());
            CHECK(time.value().count() / 3600.0 ==
                  doctest::Approx(model_hours(millimetres, {4, -18, coefficient, -15}))
                      .epsilon(0.03));
        }
    }
}

TEST_CASE("a colder refrigerator of 2 °C adds about 40 % to 4 °C in the model") {
    for (const double millimetres : {20.0, 40.0, 75.0}) {
        const double ratio =
            model_hours(millimetres, {-18, 2, 6, 0}) / model_hours(millimetres, {-18, 4, 6, 0});
        CHECK(ratio == doctest::Approx(1.42).epsilon(0.03));
    }
}

const oracle::Model watery{test_support::soup_in_model()};

double in_air(const HeatProperties& food, const LyingBag& bag, Pace pace, double celsius) {
    const auto time = thaw_time_in_air(food, bag, pace, {celsius, 6}, -18);
    REQUIRE(time.ok());
    return time.value().count() / 3600.0;
}

/// How the model sees a placing: a slab of one, or three, and what its lower face is worth.
struct Seen {
    Placing placing;
    Pace pace;
    double bags;
    double under_share;
};
constexpr Seen placings[] = {
    {Placing::Rack, Pace::Slowest, 1, 1.0},     {Placing::Tray, Pace::Slowest, 1, 0.0},
    {Placing::Tray, Pace::Quickest, 1, 0.5},    {Placing::Stacked, Pace::Slowest, 3, 1.0},
    {Placing::Stacked, Pace::Quickest, 1, 0.0},
};

TEST_CASE(
    "in a refrigerator every placing stays within 5 % of the model, dish and soup, 2 to 7 °C") {
    for (const auto& [model, food] :
         {std::pair{&moist, moist_dish()}, std::pair{&watery, soup()}}) {
        for (const auto& seen : placings) {
            for (const double celsius : {2.0, 4.0, 5.0, 7.0}) {
                for (const double millimetres : {15.0, 30.0, 60.0, 120.0}) {
                    const double heat_unfrozen =
                        food.heat_unfrozen; // clang 14 captures no structured binding
                    CAPTURE(heat_unfrozen);
                    CAPTURE(static_cast<int>(seen.placing));
                    CAPTURE(static_cast<int>(seen.pace));
                    CAPTURE(celsius);
                    CAPTURE(millimetres);
                    const double metres = millimetres / 1000.0;
                    const double hours = model->hours_until(
                        {.thickness = metres * seen.bags}, {-18, celsius, 6, 0, seen.under_share},
                        seen.bags * millimetres > 100.0 ? 10 : 5);
                    const LyingBag bag{Length::millimetres(millimetres), {}, seen.placing};
                    CHECK(in_air(food, bag, seen.pace, celsius) ==
                          doctest::Approx(hours).epsilon(0.05));
                }
            }
        }
    }
}

TEST_CASE("the rim's help stays within 7 % of the model for piles wider than high") {
    for (const double litres : {0.5, 2.0}) {
        for (const double millimetres : {20.0, 45.0, 80.0}) {
            for (const auto& seen : placings) {
                CAPTURE(litres);
                CAPTURE(millimetres);
                CAPTURE(static_cast<int>(seen.placing));
                CAPTURE(static_cast<int>(seen.pace));
                const double metres = millimetres / 1000.0;
                const double diameter = 2.0 * std::sqrt(litres / 1000.0 / metres / 3.14159265);
                const double seen_hours = moist.hours_until({metres * seen.bags, diameter},
                                                            {-18, 4, 6, 0, seen.under_share}, 5);
                const double hours =
                    in_air(moist_dish(), {Length::millimetres(millimetres), litres, seen.placing},
                           seen.pace, 4);
                const bool wide = diameter > metres * (seen.under_share > 0.0 ? seen.bags : 2.0);
                CHECK(hours <= 1.05 * seen_hours);
                CHECK(hours >= (wide ? 0.93 : 0.88) * seen_hours);
            }
        }
    }
}

TEST_CASE("a bag is thawed through by the end of its lead, and never before its soonest") {
    for (const auto& [model, wetness] :
         {std::pair{&moist, Wetness::Dish}, std::pair{&watery, Wetness::Soup}}) {
        for (const auto& seen : placings) {
            for (const auto& [grams, millimetres] : {std::pair{500.0, 30.0}, {2200.0, 50.0}}) {
                CAPTURE(static_cast<int>(seen.placing));
                CAPTURE(static_cast<int>(seen.pace));
                const double weight = grams;
                CAPTURE(weight);
                ThawSettings settings;
                settings.placing = seen.placing;
                settings.wetness = wetness;
                const auto lead =
                    thaw_lead(ThawMethod::Refrigerator, Length::millimetres(millimetres),
                              Mass{grams}, settings);
                REQUIRE(lead.ok());
                const double metres = millimetres / 1000.0;
                const double diameter =
                    2.0 * std::sqrt(grams / 1050.0 / 1000.0 / metres / 3.14159265);
                const bool slowest = seen.pace == Pace::Slowest;
                // Little air around it, or much.
                const double hours =
                    model->hours_until({metres * seen.bags, diameter},
                                       {-18, 4, slowest ? 5.2 : 7.0, 0, seen.under_share}, 5);
                if (slowest)
                    CHECK(in_hours(lead.value().lead) >= hours);
                else
                    CHECK(in_hours(lead.value().soonest) <= hours);
            }
        }
    }
}

// Figures of another enthalpy model, of a food scientist's: 75 % water, 4 °C, 6 W/(m² K), a disc;
// hours on a rack, on a tray, and in the middle of three. What is printed adds a fifth.
TEST_CASE("the placings agree with the figures of another model within a tenth") {
    struct Row {
        double kilograms;
        double millimetres;
        double rack;
        double tray;
        double stacked;
    };
    for (const auto& row :
         {Row{1, 30, 23, 39, 51}, Row{2.2, 30, 25, 47, 64}, Row{2, 50, 36, 57, 72}}) {
        const auto hours = [&row](Placing placing) {
            return in_air(moist_dish(),
                          {Length::millimetres(row.millimetres), row.kilograms / 1.05, placing},
                          Pace::Slowest, 4);
        };
        CAPTURE(row.kilograms);
        CHECK(hours(Placing::Rack) == doctest::Approx(row.rack).epsilon(0.1));
        CHECK(hours(Placing::Tray) == doctest::Approx(row.tray).epsilon(0.1));
        CHECK(hours(Placing::Stacked) == doctest::Approx(row.stacked).epsilon(0.1));
    }
    // "A soup of 88 % water adds 45 %."
    const LyingBag bag{Length::millimetres(30), 1.0, Placing::Rack};
    CHECK(in_air(soup(), bag, Pace::Slowest, 4) / in_air(moist_dish(), bag, Pace::Slowest, 4) ==
          doctest::Approx(1.45).epsilon(0.07));
}

} // namespace enthalpy_model_test
