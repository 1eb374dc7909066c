#include "kitchen/heat/cooling_advice.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace thawslip::literals;
using namespace std::chrono_literals;

namespace {

CoolingAdvice advice(Length thickness, double grams, Placing placing = Placing::Tray,
                     double celsius = 4.0) {
    ThawSettings settings;
    settings.placing = placing;
    settings.refrigerator.celsius = celsius;
    const auto found = cooling_advice(thickness, Mass{grams}, settings);
    REQUIRE(found);
    return *found;
}

} // namespace

TEST_CASE(
    "the thinnest bags cool as they lie, thicker ones on a rack, then in ice water, then not") {
    CHECK(advice(5_mm, 500).way == CoolingWay::AsPlaced);
    CHECK(advice(12_mm, 1000).way == CoolingWay::OnRack);
    CHECK(advice(30_mm, 2200).way == CoolingWay::IceWater);
    CHECK(advice(50_mm, 2000).way == CoolingWay::IceWater);
    CHECK(advice(150_mm, 10'000).way == CoolingWay::BeforeBags);
}

TEST_CASE("what is advised keeps to 2 h and 6 h, and what is not does not") {
    for (double millimetres = 5; millimetres <= 200; millimetres += 5) {
        const auto found = advice(Length::millimetres(millimetres), 2000);
        const auto in_time = [](const CoolingSpans& spans) {
            return spans.to_21 && *spans.to_21 <= 2h && spans.to_5 && *spans.to_5 <= 6h;
        };
        CHECK(in_time(found.as_placed) == (found.way == CoolingWay::AsPlaced));
        if (found.way == CoolingWay::IceWater)
            CHECK(in_time(found.in_ice_water));
        if (found.way == CoolingWay::BeforeBags)
            CHECK_FALSE(in_time(found.in_ice_water));
    }
}

TEST_CASE("the thickest bag for ice water passes, and one millimetre more does not") {
    const auto found = advice(200_mm, 4000);
    REQUIRE(found.way == CoolingWay::BeforeBags);
    CHECK(advice(found.thickest_in_ice, 4000).way == CoolingWay::IceWater);
    CHECK(advice(found.thickest_in_ice + 1_mm, 4000).way == CoolingWay::BeforeBags);
}

TEST_CASE("a refrigerator of 5 °C never cools to 5 °C") {
    const auto found = advice(15_mm, 1000, Placing::Rack, 5.0);
    CHECK(found.as_placed.to_21);
    CHECK_FALSE(found.as_placed.to_5);
    CHECK(found.way == CoolingWay::IceWater);
}

TEST_CASE("closer packed never cools sooner") {
    const auto rack = advice(30_mm, 1000, Placing::Rack);
    const auto tray = advice(30_mm, 1000, Placing::Tray);
    const auto stack = advice(30_mm, 1000, Placing::Stacked);
    CHECK(*rack.as_placed.to_21 < *tray.as_placed.to_21);
    CHECK(*tray.as_placed.to_21 < *stack.as_placed.to_21);
    CHECK_FALSE(cooling_advice(std::nullopt, Mass{1000}, {}));
}
