#include "kitchen/heat/core_course.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;
using std::chrono::minutes;

namespace {

ThawLead lead_of(ThawMethod method, double millimetres, double grams,
                 const ThawSettings& settings) {
    const auto lead = thaw_lead(method, Length::millimetres(millimetres), Mass{grams}, settings);
    REQUIRE(lead.ok());
    return lead.value();
}

const CorePoint& at(const std::vector<CorePoint>& points, minutes after) {
    const auto found = std::ranges::find(points, after, &CorePoint::after);
    REQUIRE(found != points.end());
    return *found;
}

/// All kinds of bags and how they lie.
template <class Check>
void for_each_bag(Check check) {
    for (const auto method : {ThawMethod::Refrigerator, ThawMethod::ColdWater}) {
        for (const auto wetness : {Wetness::Dish, Wetness::Soup, Wetness::Either}) {
            for (const auto placing : {Placing::Rack, Placing::Tray, Placing::Stacked}) {
                for (const auto& [millimetres, grams] :
                     {std::pair{15.0, 300.0}, {30.0, 2200.0}, {70.0, 4000.0}}) {
                    ThawSettings settings;
                    settings.wetness = wetness;
                    settings.placing = placing;
                    CAPTURE(static_cast<int>(method));
                    CAPTURE(static_cast<int>(wetness));
                    CAPTURE(static_cast<int>(placing));
                    check(lead_of(method, millimetres, grams, settings), settings);
                }
            }
        }
    }
}

} // namespace

TEST_CASE("the course is at 0 °C when what is printed says that the bag is thawed") {
    for_each_bag([](const ThawLead& lead, const ThawSettings& settings) {
        const auto points = core_course(lead, settings, lead.lead * 2);
        CHECK(at(points, lead.lead).low == doctest::Approx(0.0).epsilon(1e-9));
        const auto soonest = lead.method == ThawMethod::Refrigerator ? lead.soonest : lead.lead;
        CHECK(at(points, soonest).high == doctest::Approx(0.0).epsilon(1e-9));
        for (const auto& point : points) {
            CHECK((point.low < -1e-9) == (point.after < lead.lead));
            CHECK((point.high < -1e-9) == (point.after < soonest));
        }
    });
}

TEST_CASE("the course begins in the freezer, only rises, and ends at what surrounds the bag") {
    for_each_bag([](const ThawLead& lead, const ThawSettings& settings) {
        const double medium = medium_celsius(lead.method, settings);
        const auto points = core_course(lead, settings, lead.lead * 3);
        CHECK(points.front().after == minutes{0});
        CHECK(points.front().low == doctest::Approx(-18.0));
        CHECK(points.front().high == doctest::Approx(-18.0));
        for (std::size_t i = 0; i < points.size(); ++i) {
            CHECK(points[i].low <= points[i].high);
            CHECK(points[i].high <= medium);
            if (i > 0) {
                CHECK(points[i].after > points[i - 1].after);
                CHECK(points[i].low >= points[i - 1].low);
                CHECK(points[i].high >= points[i - 1].high);
            }
        }
        CHECK(points.back().after == lead.lead * 3);
        CHECK(points.back().low == doctest::Approx(medium).epsilon(0.05));
    });
}

TEST_CASE("the course ends with the lead where nothing is asked of the time behind it") {
    const ThawSettings settings;
    const auto lead = lead_of(ThawMethod::Refrigerator, 30, 1000, settings);
    CHECK(core_course(lead, settings, minutes{0}).back().after == lead.lead);
    CHECK(core_course(lead, settings, minutes{5}).back().after == lead.lead);
}

TEST_CASE("most of the way the middle stands a little below the freezing point, where ice melts") {
    const Thawing thawing{moist_dish(), -18.0, 4.0, std::chrono::hours{20}};
    CHECK(core_celsius(thawing, std::chrono::hours{1}) < -8.0);
    CHECK(core_celsius(thawing, std::chrono::hours{4}) > -5.0);
    CHECK(core_celsius(thawing, std::chrono::hours{10}) > -2.7);
    CHECK(core_celsius(thawing, std::chrono::hours{19}) < moist_dish().freezing_point);
    CHECK(core_celsius(thawing, std::chrono::hours{20}) == doctest::Approx(0.0).epsilon(1e-9));
    CHECK(core_celsius(thawing, Seconds{0.0}) == doctest::Approx(-18.0));
    CHECK(core_celsius(thawing, Seconds{-60.0}) == doctest::Approx(-18.0));
}

TEST_CASE("there is no course in the microwave and from frozen") {
    const ThawSettings settings;
    for (const auto method : {ThawMethod::Microwave, ThawMethod::FromFrozen}) {
        CHECK(core_course(lead_of(method, 30, 1000, settings), settings, minutes{600}).empty());
    }
}

TEST_CASE("a bag that may be thawed at once has a course all the same") {
    const ThawSettings settings;
    ThawLead lead;
    lead.lead = std::chrono::hours{24};
    const auto points = core_course(lead, settings, lead.lead);
    CHECK(points.front().high == doctest::Approx(-18.0));
    CHECK(at(points, minutes{1}).high == doctest::Approx(0.0).epsilon(1e-9));
}
