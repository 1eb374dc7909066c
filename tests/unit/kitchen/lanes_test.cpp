#include "kitchen/timeline/lanes.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip::kitchen;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace {

constexpr Instant midnight = sys_days{2026y / December / 1};

/// A dish that thaws from `thaw` for `lead`, and cooks from `start` until `eat`.
DishTimeline dish(Instant thaw, minutes lead, Instant start, Instant eat) {
    ThawLead how;
    how.lead = lead;
    DishTimeline made;
    made.thaw = ThawWindow{thaw, thaw, thaw, how};
    made.cook = CookWindow{start, start, start, eat - start};
    return made;
}

Timeline two_dishes() {
    const Instant eat = midnight + 66h + 30min;
    Timeline line{{}, eat, {}, {}, {}};
    line.dishes = {dish(midnight + 8h, 36h, midnight + 64h, eat), {}};
    line.dishes[1].cook = CookWindow{eat - 50min, eat - 40min, eat - 45min, 45min};
    line.events = {{midnight + 8h, TimelineStep::Thaw, 0},
                   {midnight + 64h, TimelineStep::Start, 0},
                   {eat - 45min, TimelineStep::Start, 1},
                   {eat, TimelineStep::Ready, 0},
                   {eat, TimelineStep::Ready, 1}};
    return line;
}

} // namespace

TEST_CASE("a lane has what goes on from the freezer to the table, without a gap") {
    const auto line = two_dishes();
    const auto lanes = lanes_of(line);
    REQUIRE(lanes.size() == 2);
    CHECK(lanes[0].spans == std::vector<LaneSpan>{{Doing::Thawing, midnight + 8h, midnight + 44h},
                                                  {Doing::Waiting, midnight + 44h, midnight + 64h},
                                                  {Doing::Cooking, midnight + 64h, line.eat}});
    CHECK(lanes[1].spans == std::vector<LaneSpan>{{Doing::Cooking, line.eat - 45min, line.eat}});
    CHECK(lanes[0].events.size() == 3);
    CHECK(lanes[1].events.size() == 2);
}

TEST_CASE("a dish that is late has the span of the way that is left, one that is too late none") {
    auto line = two_dishes();
    line.dishes[0].outlook = Outlook::FasterWay;
    line.dishes[0].ways = {{ThawMethod::ColdWater, midnight + 61h, midnight + 64h}};
    line.dishes[1].outlook = Outlook::TooLate;
    const auto lanes = lanes_of(line);
    REQUIRE(lanes[0].spans.size() == 2);
    CHECK(lanes[0].spans[0] == LaneSpan{Doing::Thawing, midnight + 61h, midnight + 64h});
    CHECK(lanes[1].spans.empty());
}

TEST_CASE("days of thawing and the last hours are two stretches, which meet at a full hour") {
    const auto line = two_dishes();
    const auto lanes = lanes_of(line);
    const auto both = stretches_of(lanes, line.clock);
    REQUIRE(both.size() == 2);
    CHECK(both[0].from == midnight + 8h);
    CHECK(both[0].to == midnight + 64h);
    CHECK(both[1].from == both[0].to);
    CHECK(both[1].to == line.eat);
    const auto one = stretches_of(std::span{lanes}.subspan(1), line.clock);
    REQUIRE(one.size() == 1);
    CHECK(one[0].from == midnight + 65h);
    CHECK(stretches_of({}, line.clock).empty());
}

TEST_CASE("thawing in water belongs to the last hours") {
    auto line = two_dishes();
    line.dishes[0] = dish(midnight + 61h, 3h, midnight + 64h, line.eat);
    line.events.front().at = midnight + 61h;
    const auto stretches = stretches_of(lanes_of(line), line.clock);
    REQUIRE(stretches.size() == 1);
    CHECK(stretches[0].from == midnight + 61h);
}

TEST_CASE("ticks stand where the clock shows a round time, also where it is put on") {
    const LocalClock clock{60min, {{midnight + 61h, 120min}}};
    const auto ticks = ticks_of({midnight + 59h, midnight + 63h}, clock);
    CHECK(ticks.size() == 4 * 12 + 1);
    for (const auto& tick : ticks) {
        CHECK(on_clock(clock, tick.at).time_since_epoch() % tick.step == 0min);
    }
    const auto days = std::ranges::count(ticks_of({midnight, midnight + 96h}, clock), minutes{24h},
                                         &ClockTick::step);
    CHECK(days == 4);
    for (std::size_t i = 1; i < clock_steps().size(); ++i) {
        CHECK(clock_steps()[i] % clock_steps()[i - 1] == 0min);
    }
}

TEST_CASE("the parts of a lane have all of its events once, and its spans without a gap") {
    const auto lane = lanes_of(two_dishes())[0];
    const auto first = part_of(lane, 0, 1);
    const auto rest = part_of(lane, 1, 2);
    CHECK_FALSE(first.is_continued);
    CHECK(rest.is_continued);
    CHECK(first.events.size() == 1);
    CHECK(rest.events.size() == 2);
    CHECK(first.spans.back().to == rest.spans.front().from);
    CHECK(first.spans.front().from == lane.spans.front().from);
    CHECK(rest.spans.back().to == lane.spans.back().to);
    CHECK(part_of(lane, 0, 3).spans == lane.spans);
}
