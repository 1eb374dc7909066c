#include "kitchen/heat/thaw_lead.h"

#include <doctest/doctest.h>
#include <limits>

namespace thaw_lead_test {

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace thawslip::literals;
using namespace std::chrono_literals;
using std::chrono::minutes;

namespace {

ThawLead lead_of(ThawMethod method, std::optional<Length> thickness, std::optional<Mass> weight,
                 const ThawSettings& settings = {}) {
    const auto lead = thaw_lead(method, thickness, weight, settings);
    REQUIRE(lead.ok());
    return lead.value();
}

ThawSettings placed(Placing placing) {
    ThawSettings settings;
    settings.placing = placing;
    return settings;
}

constexpr double pound = 453.59237;

struct Case {
    const char* name;
    ThawMethod method;
    std::optional<Length> thickness;
    std::optional<Mass> weight;
    minutes lead;
    LeadBasis decided_by;
    MissingSize missing;
};

const Case cases[] = {
    {"a flat 1 kg bag: the agencies' full day is longer", ThawMethod::Refrigerator, 20_mm,
     Mass{1000}, 24h, LeadBasis::AgencyRule, MissingSize::None},
    {"2.2 kg at 25 mm: 4.85 lb at 24 h for 4 lb", ThawMethod::Refrigerator, 25_mm, Mass{2200}, 30h,
     LeadBasis::AgencyRule, MissingSize::None},
    {"1 kg at 45 mm: the thickness is longer", ThawMethod::Refrigerator, 45_mm, Mass{1000}, 37h,
     LeadBasis::HeatTransfer, MissingSize::None},
    {"thickness alone: an endless slab", ThawMethod::Refrigerator, 45_mm, std::nullopt, 50h,
     LeadBasis::HeatTransfer, MissingSize::Weight},
    {"exactly 4 lb without a thickness", ThawMethod::Refrigerator, std::nullopt, Mass{4 * pound},
     24h, LeadBasis::AgencyRule, MissingSize::Thickness},
    {"20 lb without a thickness: five days", ThawMethod::Refrigerator, std::nullopt,
     Mass{20 * pound}, 120h, LeadBasis::AgencyRule, MissingSize::Thickness},
    {"nothing known: a full day at least", ThawMethod::Refrigerator, std::nullopt, std::nullopt,
     24h, LeadBasis::AgencyRule, MissingSize::Both},
    {"1 lb in cold water", ThawMethod::ColdWater, std::nullopt, Mass{pound}, 60min,
     LeadBasis::AgencyRule, MissingSize::Thickness},
    {"3 lb in cold water: within 2–3 h", ThawMethod::ColdWater, std::nullopt, Mass{3 * pound},
     150min, LeadBasis::AgencyRule, MissingSize::Thickness},
    {"4 lb in cold water", ThawMethod::ColdWater, std::nullopt, Mass{4 * pound}, 180min,
     LeadBasis::AgencyRule, MissingSize::Thickness},
    {"12 lb in cold water: 30 min per lb", ThawMethod::ColdWater, std::nullopt, Mass{12 * pound},
     360min, LeadBasis::AgencyRule, MissingSize::Thickness},
    {"a thick light bag in cold water", ThawMethod::ColdWater, 50_mm, Mass{1000}, 300min,
     LeadBasis::HeatTransfer, MissingSize::None},
    {"an unknown bag in cold water", ThawMethod::ColdWater, std::nullopt, std::nullopt, 180min,
     LeadBasis::AgencyRule, MissingSize::Both},
    {"1 kg in the microwave", ThawMethod::Microwave, std::nullopt, Mass{1000}, 20min,
     LeadBasis::HeatBalance, MissingSize::None},
    {"an unknown bag in the microwave", ThawMethod::Microwave, 30_mm, std::nullopt, 30min,
     LeadBasis::CommonPractice, MissingSize::Weight},
    {"from frozen", ThawMethod::FromFrozen, 30_mm, Mass{1000}, 0min, LeadBasis::AgencyRule,
     MissingSize::None},
};

} // namespace

TEST_CASE("the lead is the longer of heat transfer and the agencies' rule, and says which") {
    for (const auto& c : cases) {
        CAPTURE(c.name);
        const auto lead = lead_of(c.method, c.thickness, c.weight, placed(Placing::Rack));
        CHECK(lead.lead == c.lead);
        CHECK(lead.decided_by == c.decided_by);
        CHECK(lead.missing == c.missing);
    }
}

TEST_CASE("a size that is not a positive number counts as missing") {
    const auto lead =
        lead_of(ThawMethod::Refrigerator, 0_mm, Mass{std::numeric_limits<double>::quiet_NaN()});
    CHECK(lead.missing == MissingSize::Both);
    CHECK(lead.lead == 24h);
    for (const double grams : {0.0, -1.0}) {
        CHECK(lead_of(ThawMethod::Refrigerator, 25_mm, Mass{grams}).missing == MissingSize::Weight);
    }
    CHECK(lead_of(ThawMethod::Refrigerator, 25_mm, Mass{1.0}).missing == MissingSize::None);
}

TEST_CASE("neither thicker nor heavier ever means a shorter lead") {
    const auto rack = placed(Placing::Rack);
    for (const auto method : {ThawMethod::Refrigerator, ThawMethod::ColdWater}) {
        for (double grams = 200; grams < 6000; grams += 400) {
            minutes before{0};
            for (double millimetres = 10; millimetres <= 100; millimetres += 5) {
                CAPTURE(grams);
                CAPTURE(millimetres);
                const Length thickness = Length::millimetres(millimetres);
                const auto lead = lead_of(method, thickness, Mass{grams}, rack).lead;
                const double metres = millimetres / 1000;
                const bool flat = grams / 1050e3 > 2.0 * metres * metres * metres;
                if (flat) // a block that is as thick as wide loses by its rim what it gains
                    CHECK(lead >= before);
                CHECK(lead_of(method, thickness, Mass{grams + 400}, rack).lead >= lead);
                before = lead;
            }
        }
    }
}

TEST_CASE("a colder refrigerator never means a shorter lead") {
    minutes before{0};
    for (double celsius = 10.0; celsius >= 1.0; celsius -= 0.5) {
        ThawSettings settings;
        settings.refrigerator.celsius = celsius;
        const auto lead = lead_of(ThawMethod::Refrigerator, 40_mm, Mass{1500}, settings).lead;
        CHECK(lead >= before);
        before = lead;
    }
    CHECK(before > 24h);
}

TEST_CASE("on a tray, and in a stack, a bag takes about twice and thrice as long as on a rack") {
    const auto by_heat = [](Placing placing) {
        return lead_of(ThawMethod::Refrigerator, 50_mm, std::nullopt, placed(placing))
            .by_heat.value();
    };
    CHECK(by_heat(Placing::Tray) > 2 * by_heat(Placing::Rack));
    CHECK(by_heat(Placing::Tray) < 5 * by_heat(Placing::Rack) / 2);
    CHECK(by_heat(Placing::Stacked) > 3 * by_heat(Placing::Rack));
    CHECK(by_heat(Placing::Stacked) < 5 * by_heat(Placing::Rack));
}

TEST_CASE(
    "a soup takes half as long again, and what may be either is as late as it and as early as "
    "a dish") {
    const auto with = [](Wetness wetness) {
        auto settings = placed(Placing::Rack);
        settings.wetness = wetness;
        return lead_of(ThawMethod::Refrigerator, 40_mm, Mass{1500}, settings);
    };
    const double ratio =
        double(with(Wetness::Soup).by_heat->count()) / double(with(Wetness::Dish).by_heat->count());
    CHECK(ratio == doctest::Approx(1.5).epsilon(0.05));
    CHECK(with(Wetness::Either).lead == with(Wetness::Soup).lead);
    CHECK(with(Wetness::Either).soonest == with(Wetness::Dish).soonest);
}

TEST_CASE("a bag may be thawed sooner than its lead, never later") {
    for (double millimetres = 10; millimetres <= 80; millimetres += 10) {
        const auto lead =
            lead_of(ThawMethod::Refrigerator, Length::millimetres(millimetres), Mass{1500});
        CHECK(lead.soonest < lead.lead);
        CHECK(lead.soonest > 0min);
        CHECK(lead.by_heat.value() > lead.soonest);
    }
    CHECK(lead_of(ThawMethod::Refrigerator, std::nullopt, Mass{1500}).soonest <= 12h);
}

TEST_CASE("a refrigerator in which food does not thaw is a fault, whatever is known of the bag") {
    ThawSettings settings;
    settings.refrigerator.celsius = -1.0;
    for (const std::optional<Length> thickness : {std::optional{30_mm}, std::optional<Length>{}}) {
        const auto lead = thaw_lead(ThawMethod::Refrigerator, thickness, Mass{1000}, settings);
        REQUIRE_FALSE(lead.ok());
        CHECK(lead.fault() == HeatFault::MediumTooCold);
    }
    settings.water.celsius = 25.0;
    const auto warm = thaw_lead(ThawMethod::ColdWater, {}, Mass{1000}, settings);
    REQUIRE_FALSE(warm.ok());
    CHECK(warm.fault() == HeatFault::MediumTooWarm);
    settings.microwave_watts = 0.0;
    CHECK_FALSE(thaw_lead(ThawMethod::Microwave, {}, Mass{1000}, settings).ok());
}

TEST_CASE("a freezer of one star counts as −10 °C") {
    ThawSettings settings;
    settings.freezer_celsius = -6.0;
    const auto warm = lead_of(ThawMethod::Refrigerator, 45_mm, std::nullopt, settings).by_heat;
    settings.freezer_celsius = -10.0;
    CHECK(warm == lead_of(ThawMethod::Refrigerator, 45_mm, std::nullopt, settings).by_heat);
}

TEST_CASE("absurd sizes stay finite") {
    CHECK(lead_of(ThawMethod::Refrigerator, 30_mm, Mass{1e300}).lead == 10'000h);
    CHECK(lead_of(ThawMethod::ColdWater, Length::millimetres(1e150), Mass{1}).lead == 10'000h);
}

} // namespace thaw_lead_test
