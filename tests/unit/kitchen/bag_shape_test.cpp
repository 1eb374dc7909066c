#include "kitchen/heat/bag_shape.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace thawslip::literals;

namespace {

constexpr double mean_path = 2.0 * 0.5 / 6.0; // of an unfrozen dish in a refrigerator's air

double slab_millimetres(Length thickness, Placing placing, Pace pace) {
    return bag_shape({thickness, {}, placing}, pace, mean_path).slab.in_millimetres();
}

double rim_of(double litres, double millimetres) {
    const LyingBag bag{Length::millimetres(millimetres), litres, Placing::Rack};
    return rim_factor(bag_shape(bag, Pace::Slowest, mean_path), mean_path);
}

} // namespace

TEST_CASE(
    "a bag on a rack is its own slab, on an insulator one twice as thick, in a stack thrice") {
    using enum Placing;
    CHECK(slab_millimetres(30_mm, Rack, Pace::Slowest) == doctest::Approx(30));
    CHECK(slab_millimetres(30_mm, Rack, Pace::Quickest) == doctest::Approx(30));
    CHECK(slab_millimetres(30_mm, Tray, Pace::Slowest) == doctest::Approx(60));
    CHECK(slab_millimetres(30_mm, Stacked, Pace::Slowest) == doctest::Approx(90));
    CHECK(slab_millimetres(30_mm, Stacked, Pace::Quickest) == doctest::Approx(60));
}

TEST_CASE("on a tray at its quickest, the fronts of both faces meet at the same time") {
    const double share = 0.5;
    for (const double metres : {0.005, 0.03, 0.1}) {
        const double slab =
            slab_millimetres(Length::millimetres(1000 * metres), Placing::Tray, Pace::Quickest);
        const double upper = slab / 2000.0;
        const double under = metres - upper;
        // Plank's time for a front from one face, over h and its share of it, times k/(ρ L/ΔT).
        const double from_above = upper * mean_path / 2 + upper * upper / 2;
        const double from_below = under * mean_path / 2 / share + under * under / 2;
        CHECK(from_above == doctest::Approx(from_below));
    }
}

TEST_CASE("the rim helps a narrow thick bag more than a wide flat one, and never hinders") {
    double before = 1.0;
    for (double millimetres = 10.0; millimetres <= 120.0; millimetres += 5.0) {
        const double rim = rim_of(1.0, millimetres);
        CHECK(rim >= before);
        before = rim;
    }
    CHECK(rim_of(1.0, 10.0) < 1.03);
}

TEST_CASE("a piece as thick as it is wide thaws three times as fast as a slab") {
    const double pi = 3.14159265;
    const double litres = pi / 4.0; // 100 mm high and wide
    CHECK(rim_of(litres, 100.0) == doctest::Approx(3.0).epsilon(0.001));
}

TEST_CASE("without a volume there is no rim") {
    CHECK(rim_factor(bag_shape({30_mm, {}, Placing::Rack}, Pace::Slowest, mean_path), mean_path) ==
          1.0);
}
