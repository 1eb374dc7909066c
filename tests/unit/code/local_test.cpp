// How a place of a symbol is told from the places around it.

#include "code/recover/local.h"
#include "code/sample.h"

#include <cmath>
#include <doctest/doctest.h>
#include <limits>

namespace local_test {

using namespace thawslip::code;

namespace {

/// Places around the middle of the symbol as an affine map shows them.
Place shown(double x, double y) {
    return {100.0 + 5.0 * x - 1.5 * y, 80.0 + 0.75 * x + 4.0 * y};
}

/// The four places so far from the middle along the axes, as `seen` shows them.
template <class Seen>
void add_cross(std::vector<Known>& known, double away, double weight, const Seen& seen) {
    for (const auto& [x, y] : {Place{away, 0.0}, {-away, 0.0}, {0.0, away}, {0.0, -away}}) {
        known.push_back({{x, y}, seen(x, y), weight});
    }
}

} // namespace

TEST_CASE("a picture between its pixels is as light as its neighbours are near") {
    const GreyPicture picture{3, 3, {0, 40, 80, 100, 140, 180, 200, 240, 250}};
    CHECK(sample(picture, 0.0, 0.0) == 0);
    CHECK(sample(picture, 1.0, 1.0) == 140);
    CHECK(sample(picture, 0.25, 0.0) == 10);
    CHECK(sample(picture, 0.0, 0.75) == 75);
    CHECK(sample(picture, 0.5, 0.5) == 70);
    CHECK(sample(picture, 1.75, 0.5) == 120);
    CHECK(sample(picture, 1.5, 1.5) == 203); // 202.5
    CHECK(sample(picture, 1.999, 1.999) == 250);
    // A pixel's middle lies half a pixel from its corner.
    CHECK(grey_at(picture, {1.5, 0.5}) == 40.0);
    CHECK(grey_at(picture, {0.5, 1.5}) == 100.0);
}

TEST_CASE("beyond a picture all is grey, neither ink nor paper") {
    const GreyPicture picture{3, 2, {0, 0, 0, 0, 0, 0}};
    constexpr double nowhere = std::numeric_limits<double>::quiet_NaN();
    for (const auto& [x, y] : {Place{-0.001, 0.5},
                               {0.5, -0.001},
                               {2.0, 0.5},
                               {0.5, 1.0},
                               {1e18, 0.0},
                               {nowhere, 0.5},
                               {0.5, nowhere}}) {
        CAPTURE(x);
        CAPTURE(y);
        CHECK(sample(picture, x, y) == 128);
    }
    CHECK(sample(picture, 1.999, 0.999) == 0);
    CHECK(sample(picture, 0.0, 0.0) == 0);
}

TEST_CASE("what lies as an affine map has it is told by that map, wherever it is asked") {
    std::vector<Known> known;
    for (const auto& [x, y] : {Place{0, 0}, {4, 1}, {-3, 2}, {2, -5}, {7, 6}}) {
        known.push_back({{x, y}, shown(x, y), 0.3 + 0.1 * y * y});
    }
    for (const auto& [x, y] : {Place{0, 0}, {3, -2}, {-6, 5}}) {
        const auto local = local_fit(known, {x, y}, 6.0);
        REQUIRE(local);
        CHECK(local->middle.x == doctest::Approx(shown(x, y).x));
        CHECK(local->middle.y == doctest::Approx(shown(x, y).y));
        CHECK(local->across.x == doctest::Approx(5.0));
        CHECK(local->across.y == doctest::Approx(0.75));
        CHECK(local->down.x == doctest::Approx(-1.5));
        CHECK(local->down.y == doctest::Approx(4.0));
        const auto there = moved(*local, 2.0, -3.0);
        CHECK(there.x == doctest::Approx(shown(x + 2.0, y - 3.0).x));
        CHECK(there.y == doctest::Approx(shown(x + 2.0, y - 3.0).y));
    }
}

TEST_CASE("nearer places count more, as a Gaussian has it, and so do those that are surer") {
    // Two crosses, the outer one seen 10 pixels to the right: in the middle that is the mean of
    // both, weighted, for nothing else distinguishes them.
    constexpr double reach = 3.0;
    for (const double away : {2.0, 3.0, 6.0}) {
        for (const double weight : {1.0, 0.25}) {
            CAPTURE(away);
            CAPTURE(weight);
            std::vector<Known> known;
            add_cross(known, 1.0, 1.0, shown);
            add_cross(known, away, weight, [](double x, double y) {
                const auto place = shown(x, y);
                return Place{place.x + 10.0, place.y};
            });
            const double near = std::exp(-1.0 / (2.0 * reach * reach));
            const double far = weight * std::exp(-away * away / (2.0 * reach * reach));
            const auto local = local_fit(known, {0.0, 0.0}, reach);
            REQUIRE(local);
            CHECK(local->middle.x == doctest::Approx(100.0 + 10.0 * far / (near + far)));
            CHECK(local->middle.y == doctest::Approx(80.0));
            CHECK(local->across.x == doctest::Approx(5.0));
        }
    }
}

TEST_CASE("places on a line tell nothing of what lies beside it") {
    CHECK_FALSE(local_fit({}, {0, 0}, 4.0));
    std::vector<Known> known;
    for (const double x : {0.0, 1.0, 2.0, 5.0}) {
        known.push_back({{x, 2.0 * x + 1.0}, shown(x, 2.0 * x + 1.0), 1.0});
        CHECK_FALSE(local_fit(known, {1.0, 1.0}, 4.0));
    }
    known.push_back({{1.0, 1.0}, shown(1.0, 1.0), 1.0});
    CHECK(local_fit(known, {1.0, 1.0}, 4.0));
    CHECK_FALSE(local_fit(known, {1000.0, 0.0}, 4.0)); // so far away nothing counts
}

} // namespace local_test
