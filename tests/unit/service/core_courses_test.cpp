#include "days.h"
#include "service/dinner/core_courses.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace core_courses_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

constexpr auto day = std::chrono::sys_days{std::chrono::year{2026} / 10 / 20};

/// A plan of the stew and the gratin for the evening of the 24th, asked for at `now`.
service::DinnerPlan plan_at(kitchen::Instant now) {
    service::DinnerQuestion question{
        {},
        kitchen::LocalMinute{(day + std::chrono::hours{4 * 24 + 18}).time_since_epoch()},
        now,
        {},
        {}};
    auto plan =
        service::dinner_plan(packages_of(stew + gratin), question, style_of(service::Settings{}));
    REQUIRE(plan);
    return *std::move(plan.value);
}

std::chrono::minutes thawed_at(const service::CoreCourse& course) {
    const auto found = std::ranges::find_if(
        course.points, [](const kitchen::CorePoint& point) { return point.low >= -1e-9; });
    REQUIRE(found != course.points.end());
    return found->after;
}

} // namespace

TEST_CASE("only what thaws has a course, from when it is moved until it is cooked") {
    const auto plan = plan_at(day);
    const auto courses = service::core_courses(plan, {});
    REQUIRE(courses.size() == 1); // the gratin is cooked from frozen
    const auto& stew_line = plan.line.dishes[courses[0].dish];
    CHECK(plan.dishes[courses[0].dish].package.dish == "Barley stew");
    CHECK(courses[0].method == kitchen::ThawMethod::Refrigerator);
    CHECK(courses[0].begins == stew_line.thaw->at);
    CHECK(courses[0].medium == 4.0);
    CHECK(thawed_at(courses[0]) == stew_line.thaw->lead.lead);
    CHECK(courses[0].begins + courses[0].points.back().after == stew_line.cook->at);
}

TEST_CASE("a dish that only a faster way serves has the course of that way") {
    const auto plan = plan_at(day + std::chrono::hours{4 * 24 + 10});
    const auto courses = service::core_courses(plan, {});
    REQUIRE(courses.size() == 1);
    const auto& way = plan.line.dishes[courses[0].dish].ways.front();
    CHECK(way.method == kitchen::ThawMethod::ColdWater);
    CHECK(courses[0].method == way.method);
    CHECK(courses[0].begins == way.begin);
    CHECK(courses[0].medium == 10.0);
    CHECK(thawed_at(courses[0]) == way.start - way.begin);
}

TEST_CASE("a dish that cannot be ready any longer has none") {
    CHECK(service::core_courses(
              plan_at(day + std::chrono::hours{4 * 24 + 17} + std::chrono::minutes{55}), {})
              .empty());
}

} // namespace core_courses_test
