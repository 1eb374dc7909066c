#include "kitchen/heat/freezing_time.h"

#include <doctest/doctest.h>
#include <limits>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace thawslip::literals;

namespace {

double freezing_hours(Length thickness, Surroundings air, Cooling cooling = {}) {
    const auto time = freezing_time(moist_dish(), thickness, air, cooling);
    REQUIRE(time.ok());
    return time.value().count() / 3600.0;
}

HeatFault fault(Length thickness, Surroundings air, Cooling cooling = {}) {
    const auto time = freezing_time(moist_dish(), thickness, air, cooling);
    REQUIRE_FALSE(time.ok());
    return time.fault();
}

} // namespace

TEST_CASE("a thicker bag never freezes sooner") {
    for (double millimetres = 5.0; millimetres < 200.0; millimetres += 1.0)
        CHECK(freezing_hours(Length::millimetres(millimetres + 1.0), {-18, 8}) >
              freezing_hours(Length::millimetres(millimetres), {-18, 8}));
}

TEST_CASE("a colder freezer never freezes later") {
    for (double celsius = -40.0; celsius < -16.0; celsius += 0.5)
        CHECK(freezing_hours(30_mm, {celsius, 8}) < freezing_hours(30_mm, {celsius + 0.5, 8}));
}

TEST_CASE("a bag that goes in warmer never freezes sooner") {
    for (double celsius = 0.0; celsius < 30.0; celsius += 1.0)
        CHECK(freezing_hours(30_mm, {-18, 8}, {celsius + 1.0, -15}) >
              freezing_hours(30_mm, {-18, 8}, {celsius, -15}));
}

TEST_CASE("a freezing time that cannot be reckoned says why") {
    constexpr double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(fault(0_mm, {-18, 8}) == HeatFault::NoSuchSize);
    CHECK(fault(Length::millimetres(nan), {-18, 8}) == HeatFault::NoSuchSize);
    CHECK(fault(30_mm, {-18, -1}) == HeatFault::NoSuchSize);
    CHECK(fault(30_mm, {-12, 8}) == HeatFault::MediumTooWarm);
    CHECK(fault(30_mm, {-18, 8}, {-5, -15}) == HeatFault::OutsideFormula);
    CHECK(fault(30_mm, {-18, 8}, {4, 0}) == HeatFault::OutsideFormula);
}

TEST_CASE("from 75 % water Earle's estimates come near the row for beef") {
    // R. L. Earle, Unit Operations in Food Processing, Appendix 7: beef, 75 % water, 3.22 and
    // 1.67 kJ/(kg K), 255 kJ/kg.
    const auto beef = from_water_content(0.75, -2.0);
    CHECK(beef.heat_unfrozen == doctest::Approx(3220).epsilon(0.05));
    CHECK(beef.heat_frozen == doctest::Approx(1670).epsilon(0.08));
    CHECK(beef.latent_heat == doctest::Approx(255e3).epsilon(0.02));
}
