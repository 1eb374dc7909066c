// A second opinion on freezing times: the three stages of Pham (1984), each with its own log-mean
// temperature difference. Example E is the printed erratum to that paper.

#include "kitchen/heat/freezing_time.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

double log_mean(double a, double b) {
    return (a - b) / std::log(a / b);
}

struct Stages {
    double precooling;
    double freezing;
    double tempering;
};

/// Temperature differences of the stages; `mean_end` is the mean temperature at the end.
Stages differences(double start, double freezing_point, double medium, double mean_end) {
    return {log_mean(start - medium, freezing_point - medium), freezing_point - medium,
            log_mean(freezing_point - medium, mean_end - medium)};
}

double three_stage_hours(double thickness, Surroundings air, Cooling cooling) {
    const auto food = moist_dish();
    const double biot_frozen = air.coefficient * thickness / food.conductivity_frozen;
    const double biot_unfrozen = air.coefficient * thickness / food.conductivity_unfrozen;
    const double mean_end = cooling.core - (cooling.core - air.celsius) / (2.0 + 4.0 / biot_frozen);
    const auto difference = differences(cooling.start, food.freezing_point, air.celsius, mean_end);
    // Heat per square metre of one face.
    const double mass = food.density * thickness / 2.0;
    const double first = mass * food.heat_unfrozen * (cooling.start - food.freezing_point);
    const double second = mass * food.latent_heat;
    const double third = mass * food.heat_frozen * (food.freezing_point - mean_end);
    return (first / difference.precooling * (1.0 + biot_unfrozen / 6.0) +
            second / difference.freezing * (1.0 + biot_frozen / 4.0) +
            third / difference.tempering * (1.0 + biot_frozen / 6.0)) /
           air.coefficient / 3600.0;
}

} // namespace

TEST_CASE("worked example E: the log-mean differences of the erratum to Pham 1984") {
    // scribd 529362460: 28.5 °C, freezing at −2.1 °C, air −20.9 °C, mean end −13.7 °C.
    const auto seen = differences(28.5, -2.1, -20.9, -13.7);
    CHECK(seen.precooling == doctest::Approx(31.7).epsilon(0.002));
    CHECK(seen.freezing == doctest::Approx(18.8).epsilon(0.002));
    CHECK(seen.tempering == doctest::Approx(12.1).epsilon(0.002));
}

TEST_CASE("the three stages of Pham 1984 and the one formula of Pham 1986 tell like times") {
    // The older method lets all water freeze at the freezing point, so it is the shorter one.
    for (const double millimetres : {15.0, 25.0, 40.0, 60.0, 80.0}) {
        CAPTURE(millimetres);
        const auto time =
            freezing_time(moist_dish(), Length::millimetres(millimetres), {-18, 8}, {4, -15});
        REQUIRE(time.ok());
        const double ratio = three_stage_hours(millimetres / 1000.0, {-18, 8}, {4, -15}) /
                             (time.value().count() / 3600.0);
        CHECK(ratio > 0.80);
        CHECK(ratio < 1.05);
    }
}
