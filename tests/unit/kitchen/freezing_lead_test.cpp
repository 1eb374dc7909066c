#include "kitchen/heat/freezing_lead.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace thawslip::literals;
using namespace std::chrono_literals;

namespace {

ThawSettings placed(Placing placing) {
    ThawSettings settings;
    settings.placing = placing;
    return settings;
}

} // namespace

TEST_CASE("a bag's freezing time is Pham's with a fifth added, in whole hours") {
    // Pham (1986) for 4 to −15 °C in air of −18 °C at 8 W/(m² K), as the regression table in
    // tests/conformance/heat has it: 7.9 h for 20 mm, 9.9 h for 25 mm, 16.2 h for 40 mm.
    CHECK(freezing_lead(20_mm, {}, placed(Placing::Rack)) == 10h); // 9.5
    CHECK(freezing_lead(25_mm, {}, placed(Placing::Rack)) == 12h); // 11.9
    CHECK(freezing_lead(40_mm, {}, placed(Placing::Rack)) == 20h); // 19.4
    CHECK(freezing_lead(20_mm, {}, placed(Placing::Tray)) == 20h); // as 40 mm on a rack
}

TEST_CASE("a thicker bag never has a shorter lead") {
    auto before = 0min;
    for (int millimetres = 2; millimetres <= 300; ++millimetres) {
        const auto time = freezing_lead(Length::millimetres(millimetres), {}, {});
        REQUIRE(time.has_value());
        CHECK(*time >= before);
        before = *time;
    }
}

TEST_CASE("without a thickness, or in a freezer that is too warm, there is no freezing time") {
    CHECK_FALSE(freezing_lead(std::nullopt, {}, {}).has_value());
    ThawSettings warm;
    warm.freezer_celsius = -10;
    CHECK_FALSE(freezing_lead(25_mm, {}, warm).has_value());
}

TEST_CASE("a soup freezes later than a dish, a stack later than a tray, a small bag sooner") {
    auto soup = placed(Placing::Rack);
    soup.wetness = Wetness::Soup;
    CHECK(freezing_lead(30_mm, {}, soup) > freezing_lead(30_mm, {}, placed(Placing::Rack)));
    CHECK(freezing_lead(30_mm, {}, placed(Placing::Stacked)) >
          freezing_lead(30_mm, {}, placed(Placing::Tray)));
    CHECK(freezing_lead(30_mm, Mass{500}, {}) < freezing_lead(30_mm, Mass{4000}, {}));
}
