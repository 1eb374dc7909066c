#include "kitchen/heat/thaw_time.h"

#include <doctest/doctest.h>
#include <limits>

namespace thaw_time_test {

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace thawslip::literals;

namespace {

double hours(Length thickness, Surroundings medium, double start = -18.0) {
    const auto time = thaw_time(moist_dish(), thickness, medium, start);
    REQUIRE(time.ok());
    return time.value().count() / 3600.0;
}

HeatFault fault(Length thickness, Surroundings medium, double start = -18.0) {
    const auto time = thaw_time(moist_dish(), thickness, medium, start);
    REQUIRE_FALSE(time.ok());
    return time.fault();
}

} // namespace

TEST_CASE("a thicker bag never thaws sooner") {
    for (double millimetres = 5.0; millimetres < 200.0; millimetres += 1.0)
        CHECK(hours(Length::millimetres(millimetres + 1.0), {4, 6}) >
              hours(Length::millimetres(millimetres), {4, 6}));
}

TEST_CASE("a colder refrigerator never thaws sooner") {
    for (double celsius = 1.0; celsius < 20.0; celsius += 0.25)
        CHECK(hours(30_mm, {celsius, 6}) > hours(30_mm, {celsius + 0.25, 6}));
}

TEST_CASE("a colder freezer never means sooner thawed") {
    for (double celsius = -40.0; celsius < -11.0; celsius += 1.0)
        CHECK(hours(30_mm, {4, 6}, celsius) > hours(30_mm, {4, 6}, celsius + 1.0));
}

TEST_CASE("a smaller surface coefficient never thaws sooner") {
    for (double coefficient = 1.0; coefficient < 500.0; coefficient *= 1.5)
        CHECK(hours(30_mm, {4, coefficient}) > hours(30_mm, {4, coefficient * 1.5}));
}

TEST_CASE("what cannot be reckoned says why") {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(fault(0_mm, {4, 6}) == HeatFault::NoSuchSize);
    CHECK(fault(-30_mm, {4, 6}) == HeatFault::NoSuchSize);
    CHECK(fault(Length::millimetres(nan), {4, 6}) == HeatFault::NoSuchSize);
    CHECK(fault(30_mm, {4, 0}) == HeatFault::NoSuchSize);
    CHECK(fault(30_mm, {0.5, 6}) == HeatFault::MediumTooCold);
    CHECK(fault(30_mm, {nan, 6}) == HeatFault::MediumTooCold);
    CHECK(fault(30_mm, {22, 6}) == HeatFault::MediumTooWarm);
    CHECK(fault(30_mm, {4, 6}, -5.0) == HeatFault::OutsideFormula);
    CHECK(fault(30_mm, {4, 6}, nan) == HeatFault::OutsideFormula);
}

TEST_CASE("in a refrigerator neither thicker, nor colder, nor closer packed means sooner thawed") {
    for (const auto pace : {Pace::Slowest, Pace::Quickest}) {
        const auto hours_of = [pace](double millimetres, double celsius, Placing placing) {
            const auto time =
                thaw_time_in_air(moist_dish(), {Length::millimetres(millimetres), {}, placing},
                                 pace, {celsius, 6}, -18);
            REQUIRE(time.ok());
            return time.value().count() / 3600.0;
        };
        for (double millimetres = 5.0; millimetres < 200.0; millimetres += 5.0) {
            for (double celsius = 1.0; celsius < 8.0; celsius += 0.5) {
                const double rack = hours_of(millimetres, celsius, Placing::Rack);
                const double tray = hours_of(millimetres, celsius, Placing::Tray);
                CHECK(hours_of(millimetres + 5.0, celsius, Placing::Rack) > rack);
                CHECK(hours_of(millimetres, celsius + 0.5, Placing::Rack) < rack);
                CHECK(tray > rack);
                CHECK(hours_of(millimetres, celsius, Placing::Stacked) > tray);
            }
        }
    }
}

} // namespace thaw_time_test
