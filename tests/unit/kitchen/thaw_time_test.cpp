#include "kitchen/thaw_time.h"

#include <doctest/doctest.h>
#include <limits>

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

TEST_CASE("the rim helps a narrow thick bag more than a wide flat one, and never hinders") {
    double before = 1.0;
    for (double millimetres = 10.0; millimetres <= 120.0; millimetres += 5.0) {
        const auto rim = rim_factors(moist_dish(), 1.0, Length::millimetres(millimetres), 6);
        CHECK(rim.least >= 1.0);
        CHECK(rim.most >= rim.least);
        CHECK(rim.most >= before);
        before = rim.most;
    }
}

TEST_CASE("a piece as thick as it is wide thaws at most three times as fast as a slab") {
    const auto rim = rim_factors(moist_dish(), 0.001, 100_mm, 6);
    CHECK(rim.most == doctest::Approx(3.0));
    CHECK(rim.least == doctest::Approx(3.0));
}
