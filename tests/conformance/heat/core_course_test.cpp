// The course of the core's temperature, which is derived from a heat balance of the whole bag, held
// against the enthalpy model, which solves the heat equation inside of it and knows nothing of it.

#include "conformance/heat/soup_in_model.h"
#include "kitchen/heat/core_course.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

namespace core_course_test {

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

constexpr int cells = 6;

struct Medium {
    Surroundings surroundings;
    double under_share; ///< of the coefficient, at the lower face
    double within;      ///< K
};

/// How far the course is at most from the middle of the model, both thawed at one time.
double distance(const oracle::Model& model, const HeatProperties& food, const Medium& medium,
                double millimetres) {
    const auto [celsius, coefficient] = medium.surroundings;
    const auto seconds_to = [&, celsius = celsius, coefficient = coefficient](double core) {
        return Seconds{3600.0 * model.hours_until(
                                    {.thickness = millimetres / 1000.0},
                                    {-18, celsius, coefficient, core, medium.under_share}, cells)};
    };
    const Thawing thawing{food, -18, celsius, seconds_to(0)};
    double most = 0.0;
    for (const double core : {-12.0, -8.0, -5.0, -2.0, 1.5}) {
        most = std::max(most, std::abs(core_celsius(thawing, seconds_to(core)) - core));
    }
    return most;
}

} // namespace

TEST_CASE("the course of the core stays within the stated distance of the model") {
    const oracle::Model dish;
    const oracle::Model watery{test_support::soup_in_model()};
    for (const auto& medium :
         {Medium{{2, 6}, 1.0, 0.5}, Medium{{4, 6}, 1.0, 0.5}, Medium{{4, 6}, 0.0, 0.5},
          Medium{{7, 6}, 1.0, 0.5}, Medium{{10, 100}, 1.0, 2.0}}) {
        for (const double millimetres : {15.0, 30.0, 90.0}) {
            CAPTURE(medium.surroundings.celsius);
            CAPTURE(medium.under_share);
            CAPTURE(millimetres);
            CHECK(distance(dish, moist_dish(), medium, millimetres) < medium.within);
            CHECK(distance(watery, soup(), medium, millimetres) < medium.within);
        }
    }
}

} // namespace core_course_test
