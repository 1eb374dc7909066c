// Cooling times of hot bags, and how long the outside of a bag is warm in water, against the
// enthalpy model and against another's figures.

#include "conformance/heat/enthalpy_model.h"
#include "kitchen/heat/cooling_time.h"
#include "kitchen/heat/thaw_ceiling.h"
#include "kitchen/heat/thaw_time.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

const oracle::Model moist;

double hours(std::optional<Seconds> time) {
    REQUIRE(time.has_value());
    return time->count() / 3600.0;
}

/// From 57 to `core` °C in the middle, of a piece filled at 75 °C.
double model_hours(const oracle::Piece& piece, double core, const CoolingMedium& medium,
                   double under_share) {
    const auto until = [&](double celsius) {
        return moist.hours_until(
            piece, {75, medium.celsius, medium.coefficient_hot, celsius, under_share}, 8);
    };
    return until(core) - until(57);
}

} // namespace

TEST_CASE("cooling marks stay within 6 % of the model, and never below it by more than 1 %") {
    const CoolingMedium refrigerator{4, 8, 8};
    struct Lying {
        Placing placing;
        double bags;
        double under_share;
    };
    for (const auto& [placing, bags, share] :
         {Lying{Placing::Rack, 1, 1}, Lying{Placing::Tray, 1, 0}, Lying{Placing::Stacked, 3, 1}}) {
        for (const double metres : {0.015, 0.03, 0.06, 0.12}) {
            CAPTURE(static_cast<int>(placing));
            CAPTURE(metres);
            const LyingBag bag{Length::millimetres(1000 * metres), {}, placing};
            const auto marks = cooling_marks(moist_dish(), bag, refrigerator);
            const double ratio_21 =
                hours(marks.to_21) / model_hours({metres * bags, 0}, 21, refrigerator, share);
            const double ratio_5 =
                hours(marks.to_5) / model_hours({metres * bags, 0}, 5, refrigerator, share);
            CHECK(ratio_21 > 0.99);
            CHECK(ratio_21 < 1.06);
            CHECK(ratio_5 > 0.99);
            CHECK(ratio_5 < 1.06);
        }
    }
}

TEST_CASE("in ice water too, with the rim of a disc") {
    for (const double metres : {0.03, 0.1}) {
        const double litres = 2.0;
        const double diameter = 2.0 * std::sqrt(litres / 1000.0 / metres / 3.14159265);
        const LyingBag bag{Length::millimetres(1000 * metres), litres, Placing::Rack};
        const double ratio = hours(cooling_marks(moist_dish(), bag, ice_water()).to_21) /
                             model_hours({metres, diameter}, 21, ice_water(), 1);
        CAPTURE(metres);
        CHECK(ratio > 0.92);
        CHECK(ratio < 1.10);
    }
}

// Figures of another model, of a food scientist's: filled bags from 75 °C in a refrigerator of 4
// °C, and in an ice bath; hours from 57 to 21 °C. The weights are ours.
TEST_CASE("cooling agrees with the figures of another model within a tenth") {
    struct Row {
        double millimetres;
        double kilograms;
        Placing placing;
        double hours;
    };
    const CoolingMedium refrigerator{4, 8, 8};
    for (const auto& row : {Row{20, 1, Placing::Rack, 1.4}, Row{30, 1, Placing::Rack, 2.1},
                            Row{50, 2, Placing::Rack, 3.3}, Row{100, 4, Placing::Rack, 5.3},
                            Row{30, 1, Placing::Stacked, 4.7}}) {
        CAPTURE(row.millimetres);
        const LyingBag bag{Length::millimetres(row.millimetres), row.kilograms / 1.05, row.placing};
        CHECK(hours(cooling_marks(moist_dish(), bag, refrigerator).to_21) ==
              doctest::Approx(row.hours).epsilon(0.1));
    }
    const auto ice = cooling_marks(
        moist_dish(), {Length::millimetres(100), 4 / 1.05, Placing::Rack}, ice_water());
    CHECK(hours(ice.to_21) == doctest::Approx(1.7).epsilon(0.1));
    CHECK(hours(ice.to_5) == doctest::Approx(3.9).epsilon(0.1));
}

TEST_CASE("in water the face is reckoned to be warm for at least as long as in the model") {
    for (const double celsius : {7.0, 10.0, 21.0}) {
        for (const double millimetres : {15.0, 30.0, 50.0, 75.0, 100.0}) {
            CAPTURE(celsius);
            CAPTURE(millimetres);
            const auto seen =
                moist.course({millimetres / 1000.0, 0}, {-18, celsius, 100, 0}, 12, 5);
            const double cold = hours(face_stays_cold(moist_dish(), {celsius, 100}, 5));
            if (seen.face_warmer > 0.0)
                CHECK(cold <= 1.02 * (seen.whole - seen.face_warmer));
            ThawSettings settings;
            settings.water.celsius = celsius;
            const auto lead =
                thaw_lead(ThawMethod::ColdWater, Length::millimetres(millimetres), {}, settings);
            REQUIRE(lead.ok());
            const auto face = warm_face(lead.value(), Served::Cooked, settings);
            REQUIRE(face.has_value());
            const double warm = hours(face->warm - handling);
            CHECK(warm >= seen.face_warmer - 0.01);
        }
    }
}

// Hours of the face above 5 °C in water of 10 °C by another model, of bags whose weight is not
// known: 50 mm 1.7, 75 mm 3.9, 100 mm 6.5. An endless slab is warm for longer; never for less.
TEST_CASE("no bag that is warm for more than 4 h by another model's figures may thaw in water") {
    for (const auto& [millimetres, hours_warm] :
         {std::pair{50.0, 1.7}, std::pair{75.0, 3.9}, std::pair{100.0, 6.5}}) {
        const auto lead =
            thaw_lead(ThawMethod::ColdWater, Length::millimetres(millimetres), {}, {});
        REQUIRE(lead.ok());
        CHECK(hours(warm_face(lead.value(), Served::Cooked, {})->warm) >= hours_warm);
    }
    for (const double millimetres : {75.0, 100.0, 150.0}) {
        CHECK(past_ceiling(ThawMethod::ColdWater, Length::millimetres(millimetres), Mass{4000},
                           Served::Cooked, {}));
    }
    CHECK_FALSE(past_ceiling(ThawMethod::ColdWater, Length::millimetres(30), Mass{2000},
                             Served::Cooked, {}));
}
