#include "kitchen/heat/thaw_ceiling.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace thawslip::literals;
using namespace std::chrono_literals;

namespace {

std::optional<PastCeiling> water(std::optional<Length> thickness, std::optional<Mass> weight,
                                 Served served = Served::Cooked) {
    return past_ceiling(ThawMethod::ColdWater, thickness, weight, served, {});
}

} // namespace

TEST_CASE("a thin bag may thaw in cold water, a thick one may not, and the limit passes") {
    CHECK_FALSE(water(25_mm, Mass{1500}));
    const auto past = water(100_mm, Mass{2500});
    REQUIRE(past);
    CHECK(past->face.limit == 4h);
    CHECK(past->face.warm > 4h);
    CHECK_FALSE(past->weight); // 2.5 kg alone would pass
    REQUIRE(past->thickness);
    CHECK_FALSE(water(past->thickness, Mass{2500}));
    CHECK(water(*past->thickness + 1_mm, Mass{2500}));
}

TEST_CASE("without a thickness the agencies' time for the weight decides") {
    CHECK_FALSE(water(std::nullopt, Mass{2000}));
    const auto past = water(std::nullopt, Mass{6000});
    REQUIRE(past);
    CHECK(past->lead.decided_by == LeadBasis::AgencyRule);
    CHECK_FALSE(past->thickness);
    REQUIRE(past->weight);
    CHECK_FALSE(water(std::nullopt, past->weight));
    CHECK(water(std::nullopt, Mass{past->weight->grams + 100}));
    CHECK_FALSE(water(std::nullopt, std::nullopt));
}

TEST_CASE("handling counts, and what stays cold in the water does not") {
    const auto past = water(100_mm, std::nullopt);
    REQUIRE(past);
    const auto& [warm, limit] = past->face;
    CHECK(warm < past->lead.lead + handling);
    CHECK(warm > past->lead.lead + handling - 2h);
    CHECK(limit == 4h);
}

TEST_CASE("what is eaten as it is may not get warm at all, so only colder water would do") {
    const auto past = water(25_mm, Mass{1000}, Served::AsItIs);
    REQUIRE(past);
    CHECK(past->face.limit == 0h);
    CHECK_FALSE(past->thickness);
    ThawSettings cold;
    cold.water.celsius = 5.0;
    CHECK_FALSE(past_ceiling(ThawMethod::ColdWater, 25_mm, Mass{1000}, Served::AsItIs, cold));
}

TEST_CASE("the microwave has two hours, whatever the shape") {
    const auto microwave = [](double grams) {
        return past_ceiling(ThawMethod::Microwave, 30_mm, Mass{grams}, Served::Cooked, {});
    };
    CHECK_FALSE(microwave(2500));
    const auto past = microwave(9000);
    REQUIRE(past);
    CHECK(past->face.limit == 2h);
    REQUIRE(past->weight);
    CHECK_FALSE(microwave(past->weight->grams));
    CHECK(microwave(past->weight->grams + 100));
}

TEST_CASE("the refrigerator and cooking from frozen have no ceiling") {
    for (const auto method : {ThawMethod::Refrigerator, ThawMethod::FromFrozen}) {
        CHECK_FALSE(past_ceiling(method, 150_mm, Mass{10'000}, Served::Cooked, {}));
    }
}

TEST_CASE(
    "a soup's water lowers the ceiling, and a thicker bag never passes where a thin one fails") {
    ThawSettings soup;
    soup.wetness = Wetness::Soup;
    bool failed = false;
    for (double millimetres = 5; millimetres <= 200; millimetres += 1) {
        const auto thickness = Length::millimetres(millimetres);
        const bool fails =
            past_ceiling(ThawMethod::ColdWater, thickness, Mass{1500}, Served::Cooked, soup)
                .has_value();
        CHECK((fails || !failed));
        CHECK((fails || !water(thickness, Mass{1500})));
        failed = fails;
    }
    CHECK(failed);
}
