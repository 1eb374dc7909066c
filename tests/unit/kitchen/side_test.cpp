// What is cooked beside the bag: when it is started, so that all is ready together.

#include "kitchen/cooking/side_start.h"
#include "kitchen/shopping.h"
#include "kitchen/texts/free_texts.h"
#include "kitchen/timeline/calendar.h"
#include "kitchen/timeline/lanes.h"
#include "kitchen/timeline/timeline.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace {

const LocalClock orchard{60min, {}};
const LocalMinute supper = local_days{2026y / December / 3} + 18h + 30min;

Side side(const char* item, minutes takes, When ready = {When::Anchor::AtServing, 0min}) {
    Side one;
    one.add = {Amount{300, 1}, Amount{300, 1}, Unit::Gram, "", item, std::string{"300 g "} + item};
    one.takes = {takes, takes};
    one.ready = ready;
    return one;
}

/// Cooked for 40 minutes from frozen, with these beside it.
Package soup(std::vector<Side> sides) {
    Package package;
    package.dish = "Chestnut soup";
    package.bags = 2;
    package.thaw.method = ThawMethod::FromFrozen;
    package.cook = Cook{};
    package.cook->vessel = Vessel::Pot;
    package.cook->time = TimeRange{40min, 40min};
    package.sides = std::move(sides);
    return package;
}

Timeline asked(const Package& package, minutes before = 24h) {
    return timeline({.dishes = {{.package = package, .bags = {"CS-1"}}},
                     .eat = supper,
                     .now = read_clock(orchard, supper - before).instant,
                     .clock = orchard});
}

/// Minutes before eating, of each side's start, in order of time.
std::vector<long> starts(const Timeline& line) {
    std::vector<long> found;
    for (const auto& event : line.events) {
        if (event.what == TimelineStep::Side) {
            found.push_back((line.eat - event.at).count());
        }
    }
    return found;
}

} // namespace

TEST_CASE("a side starts so long before serving as it takes") {
    const auto line = asked(soup({side("rice", 15min)}));
    CHECK(starts(line) == std::vector<long>{15});
    CHECK(line.dishes[0].sides.at(0).ready == line.eat);
}

TEST_CASE("what can no longer be ready in time is ready when its last side is") {
    const auto sausages = side("sausages", 70min, {When::Anchor::AtStart, 0min});
    const auto late = [](std::vector<Side> sides) {
        const auto line = asked(soup(std::move(sides)), 20min);
        const auto said =
            std::ranges::find(line.remarks, RemarkId::FrozenStartTooLate, &TimelineRemark::id);
        REQUIRE(said != line.remarks.end());
        return std::get<Instant>(said->values.at(1)) - line.eat;
    };
    CHECK(late({}) == 20min); // 40 min from now
    CHECK(late({side("rice", 15min)}) == 20min);
    CHECK(late({sausages}) == 90min); // they first, then the soup's 40 min
    CHECK(late({side("dumplings", 50min), sausages}) == 90min);
}

TEST_CASE("of a side that may take longer the longest time counts, so that no table waits") {
    auto beans = side("beans", 8min);
    beans.takes.high = 10min;
    const auto line = asked(soup({beans}));
    CHECK(starts(line) == std::vector<long>{10});
    CHECK(line.dishes[0].sides.at(0).ready == line.eat);
    PlannedPackage planned;
    planned.package = soup({beans});
    CHECK(side_starts(planned).front() == SideStart{0, SideStart::From::Serving, 10min});
}

TEST_CASE("a side that takes longer than the dish starts before it") {
    const auto line = asked(soup({side("rice", 15min), side("barley", 55min)}));
    CHECK(starts(line) == std::vector<long>{55, 15});
    REQUIRE(line.events.front().what == TimelineStep::Side);
    CHECK(line.events.front().side == 1);
    CHECK(line.events.front().at < line.dishes[0].cook->at);
}

TEST_CASE("a side is ready at any moment that a finishing ingredient may have") {
    using enum When::Anchor;
    CHECK(starts(asked(soup({side("beans", 10min, {BeforeEnd, 5min})}))) == std::vector<long>{15});
    CHECK(starts(asked(soup({side("beans", 10min, {AtStart, 0min})}))) == std::vector<long>{50});
    CHECK(starts(asked(soup({side("beans", 10min, {AfterStart, 25min})}))) ==
          std::vector<long>{25});
    CHECK(starts(asked(soup({side("beans", 10min, {Halfway, 0min})}))) == std::vector<long>{30});
}

TEST_CASE("a side that is late is started now, and it is said when it is ready") {
    const auto line = asked(soup({side("barley", 55min)}), 45min);
    CHECK(starts(line) == std::vector<long>{45});
    const auto remark = std::ranges::find(line.remarks, RemarkId::SideLate, &TimelineRemark::id);
    REQUIRE(remark != line.remarks.end());
    CHECK(remark->side == 0);
    CHECK(std::get<Instant>(remark->values.at(1)) == line.eat + 10min);
    CHECK(can_be_done(line)); // the dish itself is in time
}

TEST_CASE("a side is a span beside the others in its dish's lane") {
    const auto lanes = lanes_of(asked(soup({side("barley", 55min)})));
    REQUIRE(lanes.size() == 1);
    const auto span = std::ranges::find(lanes[0].spans, Doing::Beside, &LaneSpan::what);
    REQUIRE(span != lanes[0].spans.end());
    CHECK(span->to - span->from == 55min);
}

TEST_CASE("each side has an event of its own in a calendar") {
    const auto package = soup({side("rice", 15min), side("beans", 15min)});
    const std::vector<TimelineDish> dishes{{.package = package, .bags = {"CS-1"}}};
    const auto line = asked(package);
    std::vector<EventWords> words(line.events.size(), {"something", ""});
    const auto text = calendar_text(line, dishes, words, {line.eat - days{1}});
    std::set<std::string> uids;
    std::size_t count = 0;
    for (auto at = text.find("UID:"); at != std::string::npos; at = text.find("UID:", at + 1)) {
        uids.insert(text.substr(at, text.find('\r', at) - at));
        ++count;
    }
    CHECK(count == line.events.size());
    CHECK(uids.size() == count);
}

TEST_CASE("sides stand on a card by when they are started") {
    PlannedPackage planned;
    planned.package = soup({side("rice", 15min), side("barley", 55min),
                            side("beans", 10min, {When::Anchor::AfterStart, 25min})});
    const auto found = side_starts(planned);
    REQUIRE(found.size() == 3);
    CHECK(found[0] == SideStart{1, SideStart::From::Serving, 55min});
    CHECK(found[1] == SideStart{2, SideStart::From::Start, 15min});
    CHECK(found[2] == SideStart{0, SideStart::From::Serving, 15min});
    CHECK(comes_before_dish(found[0], planned));
    CHECK_FALSE(comes_before_dish(found[1], planned));
    CHECK(comes_before(found[1], {When::Anchor::BeforeEnd, 10min}, planned));
    CHECK_FALSE(comes_before(found[2], {When::Anchor::BeforeEnd, 20min}, planned));
    // Without a cooking time nothing is started before the dish.
    planned.package.cook->time.reset();
    for (const auto& start : side_starts(planned)) {
        CHECK_FALSE(comes_before_dish(start, planned));
    }
}

TEST_CASE("sides are bought for each bag, on cook day") {
    const std::vector packages{soup({side("rice", 15min)})};
    const auto list = shopping(packages, Measures::Metric);
    CHECK(list.for_the_day.empty());
    REQUIRE(list.for_cook_day.size() == 1);
    CHECK(list.for_cook_day[0].total.low == Amount{600, 1});
}

TEST_CASE("what a side is named by is looked at for allergens, as what is added is") {
    auto package = soup({side("egg noodles", 8min)});
    package.sides[0].steps = {"Toss them in butter."};
    package.sides[0].where = KeyPath{"package[1].side[1]"};
    const auto texts = free_texts(package, names_food);
    CHECK(std::ranges::any_of(texts, [](const ReadText& text) {
        return text.written == "300 g egg noodles" && text.where.text() == "package[1].side[1].add";
    }));
    CHECK(std::ranges::any_of(free_texts(package), [](const ReadText& text) {
        return text.written == "Toss them in butter.";
    }));
}
