#include "kitchen/cooking/cook_time.h"
#include "kitchen/timeline/cook_window.h"
#include "kitchen/timeline/faster_thaw.h"
#include "kitchen/timeline/timeline.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>

namespace timeline_test {

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace {

const LocalClock orchard{60min,
                         {{sys_days{2026y / March / 29} + 1h, 120min},
                          {sys_days{2026y / October / 25} + 1h, 60min},
                          {sys_days{2027y / March / 28} + 1h, 120min}}};

Finish added(const char* item, When when) {
    Finish finish;
    finish.add.item = item;
    finish.when = when;
    return finish;
}

TimelineDish stew() {
    Package package;
    package.dish = "Squash and red lentil stew";
    package.weight = Mass{2200};
    package.thickness = Length::millimetres(30);
    package.placing = Placing::Rack;
    package.finish = {added("vegetable stock", {When::Anchor::AtStart, 0min}),
                      added("baby spinach", {When::Anchor::BeforeEnd, 10min}),
                      added("barley", {When::Anchor::AfterStart, 4h}),
                      added("sage", {When::Anchor::Halfway, 0min}),
                      added("yogurt", {When::Anchor::AtServing, 0min})};
    package.cook = Cook{};
    package.cook->in = "slow cooker";
    package.cook->vessel = Vessel::SlowCooker;
    package.cook->time = TimeRange{7h, 9h};
    return {.package = package, .bags = {"QS-1", "QS-2"}};
}

TimelineDish compote() {
    Package package;
    package.dish = "Plum and ginger compote";
    package.weight = Mass{900};
    package.thickness = Length::millimetres(20);
    package.placing = Placing::Rack;
    return {.package = package, .bags = {"PG-1"}};
}

TimelineDish pork() {
    Package package;
    package.dish = "Apple and sage pork";
    package.weight = Mass{1500};
    package.thickness = Length::millimetres(40);
    package.placing = Placing::Rack;
    package.cook = Cook{};
    package.cook->vessel = Vessel::Oven;
    package.cook->time = TimeRange{50min, 70min};
    return {.package = package, .bags = {"AP-1"}, .counts_from_frozen = true};
}

TimelineRequest request_for(std::vector<TimelineDish> dishes, LocalMinute eat, LocalMinute now) {
    return {.dishes = std::move(dishes),
            .eat = eat,
            .now = read_clock(orchard, now).instant,
            .clock = orchard};
}

const LocalMinute supper = local_days{2026y / December / 3} + 18h + 30min;
const LocalMinute week_before = supper - days{7};

std::string line_of(const Timeline& line, const TimelineEvent& event) {
    static const char* const names[] = {"thaw", "look", "start", "side", "add", "ready"};
    std::string text = to_iso(on_clock(line.clock, event.at));
    text +=
        std::string{" "} + names[static_cast<int>(event.what)] + " " + std::to_string(event.dish);
    if (event.finish)
        text += "." + std::to_string(*event.finish);
    return text;
}

std::vector<std::string> lines_of(const Timeline& line) {
    std::vector<std::string> lines;
    for (const auto& event : line.events)
        lines.push_back(line_of(line, event));
    return lines;
}

std::string clock(const Timeline& line, Instant when) {
    return to_iso(on_clock(line.clock, when));
}

const TimelineRemark* find(const Timeline& line, RemarkId id) {
    const auto found = std::find_if(line.remarks.begin(), line.remarks.end(),
                                    [&](const auto& remark) { return remark.id == id; });
    return found == line.remarks.end() ? nullptr : &*found;
}

std::string time_value(const Timeline& line, RemarkId id, std::size_t value) {
    const auto* remark = find(line, id);
    REQUIRE(remark != nullptr);
    return clock(line, std::get<Instant>(remark->values.at(value)));
}

} // namespace

TEST_CASE("a stew for supper: thaw, start, each finishing ingredient, ready") {
    const auto line = timeline(request_for({stew()}, supper, week_before));
    CHECK(lines_of(line) == std::vector<std::string>{
                                "2026-12-01T22:00 thaw 0", // 03:30 moved to when somebody is up
                                "2026-12-03T10:30 start 0",
                                "2026-12-03T10:30 add 0.0",
                                "2026-12-03T14:30 add 0.2",
                                "2026-12-03T14:30 add 0.3",
                                "2026-12-03T18:20 add 0.1",
                                "2026-12-03T18:30 ready 0",
                                "2026-12-03T18:30 add 0.4",
                            });
    REQUIRE(line.remarks.size() == 1);
    CHECK(line.remarks.front().id == RemarkId::SeveralBags);
    auto one = stew();
    one.bags.resize(1);
    CHECK(timeline(request_for({one}, supper, week_before)).remarks.empty());
}

TEST_CASE("a microwave takes one bag after another") {
    auto dish = pork();
    dish.bags = {"AP-1", "AP-2", "AP-3"};
    dish.package.thaw.method = ThawMethod::Microwave;
    dish.package.cook->vessel = Vessel::Microwave;
    dish.package.cook->time = TimeRange{10min, 10min};
    dish.thaw_lead = ThawLead{.method = ThawMethod::Microwave, .lead = 20min, .soonest = 20min};
    const auto line = timeline(request_for({dish}, supper, week_before));
    CHECK(lines_of(line) == std::vector<std::string>{"2026-12-03T17:00 thaw 0",
                                                     "2026-12-03T18:00 start 0",
                                                     "2026-12-03T18:30 ready 0"});
    CHECK(find(line, RemarkId::SeveralInMicrowave) != nullptr);
    CHECK(find(line, RemarkId::SharedAppliance) == nullptr);
}

TEST_CASE("7–9 h is planned for its middle and shows the latest start") {
    const auto line = timeline(request_for({stew()}, supper, week_before));
    const auto cook = line.dishes.at(0).cook.value();
    CHECK(clock(line, cook.no_earlier) == "2026-12-03T09:30");
    CHECK(clock(line, cook.at) == "2026-12-03T10:30");
    CHECK(clock(line, cook.no_later) == "2026-12-03T11:30");
    CHECK(cook.takes == 8h);
}

TEST_CASE("the window for the refrigerator ends a lead before cooking and starts where it keeps") {
    const auto line = timeline(request_for({stew()}, supper, week_before));
    const auto thaw = line.dishes.at(0).thaw.value();
    CHECK(clock(line, thaw.no_later) == "2026-12-02T03:30"); // 31 h before 10:30
    CHECK(thaw.no_earlier == line.dishes.at(0).cook->at - 72h - thaw.lead.soonest);
    CHECK(thaw.no_earlier <= thaw.at);
    CHECK(thaw.at <= thaw.no_later);
}

TEST_CASE("several dishes share one timeline in order of time") {
    const auto line = timeline(request_for({stew(), pork(), compote()}, supper, week_before));
    CHECK(std::is_sorted(line.events.begin(), line.events.end(),
                         [](const auto& a, const auto& b) { return a.at < b.at; }));
    CHECK(std::count_if(line.events.begin(), line.events.end(),
                        [](const auto& event) { return event.what == TimelineStep::Ready; }) == 3);
    CHECK(line.events.back().what == TimelineStep::Add); // at serving, to what is done
    // The compote is only thawed: no start, and its lead counts back from supper.
    CHECK_FALSE(line.dishes[2].cook.has_value());
    CHECK(clock(line, line.dishes[2].thaw->no_later) == "2026-12-02T18:30");
}

TEST_CASE("a later meal never means an earlier start or thaw, whatever the clock does") {
    for (const auto day : {2026y / October / 24, 2027y / March / 27, 2027y / December / 31}) {
        std::optional<Timeline> before;
        for (minutes late = 0min; late < days{3}; late += 13min) {
            const LocalMinute eat = local_days{day} + late;
            auto line = timeline(request_for({stew()}, eat, week_before - days{90}));
            if (before && before->eat <= line.eat) {
                CHECK(before->dishes[0].cook->at <= line.dishes[0].cook->at);
                CHECK(before->dishes[0].thaw->no_later <= line.dishes[0].thaw->no_later);
                CHECK(before->dishes[0].thaw->no_earlier <= line.dishes[0].thaw->no_earlier);
            }
            before = std::move(line);
        }
    }
}

TEST_CASE("a bag is moved while somebody is up, unless its window has no such time") {
    for (minutes late = 0min; late < days{1}; late += 30min) {
        auto request = request_for({stew()}, supper + late, week_before);
        auto line = timeline(request);
        const auto local = on_clock(line.clock, line.dishes[0].thaw->at);
        const minutes in_day = local - floor<days>(local);
        CHECK(in_day >= 7h);
        CHECK(in_day <= 22h);
    }
    auto hasty = stew();
    hasty.keeps_thawed = 0h;
    hasty.package.thickness = Length::millimetres(80);
    const auto line = timeline(request_for({hasty}, supper, week_before));
    CHECK(line.dishes[0].thaw->at == line.dishes[0].thaw->no_later);
    CHECK(find(line, RemarkId::ThawWindowTightToday) != nullptr);
}

TEST_CASE("what may be soft a day too early is cooked by a clock that is named") {
    auto early = stew();
    early.keeps_thawed = 24h;
    early.package.thickness = Length::millimetres(90);
    early.package.placing = Placing::Stacked;
    const auto line = timeline(request_for({early}, supper, week_before));
    const auto* tight = find(line, RemarkId::ThawWindowTight);
    REQUIRE(tight != nullptr);
    const auto& thaw = line.dishes[0].thaw.value();
    const Instant soonest = thaw.at + thaw.lead.soonest;
    CHECK(tight->values == std::vector<RemarkValue>{minutes{24h}, soonest, soonest + 24h});
    CHECK(soonest + 24h < line.dishes[0].cook->no_later);
}

TEST_CASE("spans stay true over a clock change, and the change is told") {
    struct Case {
        const char* name;
        LocalMinute eat;
        const char* no_later;
        std::optional<RemarkId> told;
    };
    const Case cases[] = {
        {"no change", local_days{2026y / October / 20} + 12h, "2026-10-18T21:00", {}},
        {"autumn: the night is an hour longer", local_days{2026y / October / 25} + 12h,
         "2026-10-23T22:00", RemarkId::ClockBack},
        {"spring: the night is an hour shorter", local_days{2027y / March / 28} + 12h,
         "2027-03-26T20:00", RemarkId::ClockForward},
    };
    for (const auto& c : cases) {
        CAPTURE(c.name);
        const auto line = timeline(request_for({stew()}, c.eat, week_before - days{90}));
        CHECK(line.eat - line.dishes[0].thaw->no_later == 39h); // 8 h of cooking, 31 h of lead
        CHECK(clock(line, line.dishes[0].thaw->no_later) == c.no_later);
        CHECK((find(line, RemarkId::ClockBack) != nullptr) == (c.told == RemarkId::ClockBack));
        CHECK((find(line, RemarkId::ClockForward) != nullptr) ==
              (c.told == RemarkId::ClockForward));
    }
}

TEST_CASE("a time to eat that the clock skips or shows twice is told") {
    const auto skipped =
        timeline(request_for({pork()}, local_days{2027y / March / 28} + 2h + 30min, week_before));
    CHECK(time_value(skipped, RemarkId::EatSkipped, 0) == "2027-03-28T03:30");
    const auto repeated = timeline(request_for(
        {pork()}, local_days{2026y / October / 25} + 2h + 30min, week_before - days{60}));
    CHECK(find(repeated, RemarkId::EatRepeated) != nullptr);
    CHECK(to_iso(on_clock(repeated.clock, repeated.eat)) == "2026-10-25T02:30");
    CHECK(offset_at(repeated.clock, repeated.eat) == 2h);
}

TEST_CASE("the leap day and the turn of the year are days like others") {
    const auto leap =
        timeline(request_for({stew()}, local_days{2028y / March / 1} + 18h + 30min, week_before));
    CHECK(clock(leap, leap.dishes[0].thaw->no_later) == "2028-02-29T03:30");
    const auto year =
        timeline(request_for({stew()}, local_days{2027y / January / 1} + 12h, week_before));
    CHECK(clock(year, year.dishes[0].cook->at) == "2027-01-01T04:00");
    CHECK(clock(year, year.dishes[0].thaw->no_later) == "2026-12-30T21:00");
}

TEST_CASE(
    "where the planned start is past but the shortest time fits, cooking is planned from now") {
    const auto now = local_days{2026y / December / 3} + 11h;
    const auto line = timeline(request_for({stew()}, supper, now));
    const auto cook = line.dishes[0].cook.value();
    CHECK(clock(line, cook.at) == "2026-12-03T11:00");
    CHECK(cook.takes == 7h + 30min);
    CHECK(time_value(line, RemarkId::StartNow, 0) == "2026-12-03T10:30");
    CHECK(time_value(line, RemarkId::StartNow, 1) == "2026-12-03T11:30");
    // The barley's 4 h count from the real start.
    CHECK(std::any_of(line.events.begin(), line.events.end(), [&](const auto& event) {
        return event.finish == 2U && clock(line, event.at) == "2026-12-03T15:00";
    }));
    CHECK(find(line, RemarkId::StartTooLate) == nullptr);
}

TEST_CASE("too late to start says so, and when it can be ready") {
    const auto now = local_days{2026y / December / 3} + 12h;
    const auto line = timeline(request_for({stew()}, supper, now));
    CHECK(time_value(line, RemarkId::StartTooLate, 0) == "2026-12-03T11:30");
    CHECK(time_value(line, RemarkId::StartTooLate, 1) == "2026-12-03T20:00");
    CHECK(rule_of(RemarkId::StartTooLate).weight == RemarkWeight::CannotBeDone);
}

TEST_CASE("a time to eat that is past says so") {
    const auto line = timeline(request_for({pork()}, supper, supper + 1h));
    CHECK(find(line, RemarkId::EatIsPast) != nullptr);
    CHECK(find(line, RemarkId::NoWayInTime) != nullptr);
    const auto ahead = timeline(request_for({pork()}, supper, supper));
    CHECK(find(ahead, RemarkId::EatIsPast) == nullptr);
}

TEST_CASE("a date on the label that lies before the day of the meal is told, and whose it is") {
    const auto remark_for = [](std::optional<KeepUntil> keep) -> std::optional<RemarkId> {
        auto dish = pork();
        dish.keep_until = keep;
        const auto line = timeline(request_for({dish}, supper, week_before));
        for (const auto id : {RemarkId::PastUseBy, RemarkId::PastBest}) {
            if (const auto* remark = find(line, id)) {
                CHECK(std::get<Date>(remark->values.at(0)) == keep->date);
                return id;
            }
        }
        return std::nullopt;
    };
    const Date day_before = 2026y / December / 2;
    CHECK(remark_for(KeepUntil{day_before, DateBasis::SetByCook, {}}) == RemarkId::PastUseBy);
    CHECK(remark_for(KeepUntil{day_before, DateBasis::StorageTable, {}}) == RemarkId::PastBest);
    CHECK(remark_for(KeepUntil{2026y / December / 3, DateBasis::SetByCook, {}}) == std::nullopt);
    CHECK(remark_for(std::nullopt) == std::nullopt);
}

TEST_CASE("a thaw that cannot make it offers each faster safe way that still fits") {
    struct Case {
        const char* name;
        minutes before_supper;
        bool water;
        bool microwave;
        bool frozen;
    };
    // 1.5 kg at 40 mm: 3.5 h in water, 30 min in the microwave; 50–70 min in the oven, or 75–105.
    const Case cases[] = {
        {"the evening before", 20h, true, true, true},
        {"three hours before", 3h, false, true, true},
        {"an hour and a half before", 90min, false, true, true},
        {"too late from frozen too", 70min, false, false, false},
    };
    for (const auto& c : cases) {
        CAPTURE(c.name);
        const auto line = timeline(request_for({pork()}, supper, supper - c.before_supper));
        CHECK(find(line, RemarkId::ThawTooLate) != nullptr);
        CHECK((find(line, RemarkId::ThawByWater) != nullptr) == c.water);
        CHECK((find(line, RemarkId::ThawByMicrowave) != nullptr) == c.microwave);
        CHECK((find(line, RemarkId::CookFromFrozen) != nullptr) == c.frozen);
        CHECK((find(line, RemarkId::NoWayInTime) != nullptr) ==
              !(c.water || c.microwave || c.frozen));
    }
}

TEST_CASE("a late dish has the events of the first way that is left, none of them past") {
    const auto now = supper - 20h;
    const auto line = timeline(request_for({pork()}, supper, now));
    const auto& dish = line.dishes.at(0);
    CHECK(dish.outlook == Outlook::FasterWay);
    REQUIRE(dish.ways.size() == 3);
    CHECK(dish.ways[0].method == ThawMethod::ColdWater); // the agencies' order
    CHECK(dish.ways[1].method == ThawMethod::Microwave);
    CHECK(dish.ways[2].method == ThawMethod::FromFrozen);
    CHECK(lines_of(line) == std::vector<std::string>{"2026-12-03T14:00 thaw 0",
                                                     "2026-12-03T17:30 start 0",
                                                     "2026-12-03T18:30 ready 0"});
    CHECK(dish.ways[0].begin == line.events[0].at);
    CHECK(dish.ways[0].cook.no_earlier == dish.ways[0].start);
    CHECK(time_value(line, RemarkId::IfThawed, 0) == "2026-12-03T17:30");
    CHECK(can_be_done(line));
}

TEST_CASE("the minute to start thawed food is said once, where there is but one") {
    auto fixed = pork();
    fixed.package.cook->time = TimeRange{60min, 60min};
    const auto line = timeline(request_for({fixed}, supper, supper - 20h));
    CHECK(time_value(line, RemarkId::IfThawedAt, 0) == "2026-12-03T17:30");
    CHECK(find(line, RemarkId::IfThawed) == nullptr);
}

TEST_CASE("no event of any plan is past, whenever it is asked for") {
    for (minutes before = 0min; before < days{4}; before += 37min) {
        const auto request = request_for({stew(), pork(), compote()}, supper, supper - before);
        const auto line = timeline(request);
        for (const auto& event : line.events) {
            CAPTURE(line_of(line, event));
            CHECK(event.at >= request.now);
        }
        for (std::size_t dish = 0; dish < line.dishes.size(); ++dish) {
            const auto outlook = line.dishes[dish].outlook;
            CHECK(line.dishes[dish].ways.empty() == (outlook != Outlook::FasterWay));
            const bool has_events = std::any_of(line.events.begin(), line.events.end(),
                                                [&](const auto& e) { return e.dish == dish; });
            CHECK(has_events == (outlook != Outlook::TooLate));
        }
    }
}

TEST_CASE("where no way serves a frozen bag, what remains is for one that has thawed in time") {
    const auto line = timeline(request_for({stew()}, supper, supper - 7h - 30min));
    CHECK(line.dishes[0].outlook == Outlook::OnlyIfThawed);
    CHECK(find(line, RemarkId::NoWayInTime) != nullptr);
    CHECK(lines_of(line).front() == "2026-12-03T11:00 start 0");
    CHECK_FALSE(can_be_done(line));
    const auto too_late = timeline(request_for({stew()}, supper, supper - 6h));
    CHECK(too_late.dishes[0].outlook == Outlook::TooLate);
    CHECK(too_late.events.empty());
}

TEST_CASE("what is thawed fast as planned is cooked as planned, whoever asks a minute too late") {
    auto dish = pork();
    dish.package.thaw.method = ThawMethod::ColdWater;
    const auto in_time = timeline(request_for({dish}, supper, week_before));
    const auto thaw = in_time.dishes[0].thaw.value();
    auto request = request_for({dish}, supper, supper);
    request.now = thaw.no_later + 1min;
    const auto line = timeline(request);
    const auto* remark = find(line, RemarkId::IfThawed);
    REQUIRE(remark != nullptr);
    CHECK(std::get<Instant>(remark->values.at(0)) == in_time.dishes[0].cook->at);
}

TEST_CASE("a bag that can no longer be thawed as planned is not to be looked at earlier") {
    auto hasty = stew();
    hasty.keeps_thawed = 0h;
    hasty.package.thickness = Length::millimetres(80);
    CHECK(find(timeline(request_for({hasty}, supper, week_before)),
               RemarkId::ThawWindowTightToday) != nullptr);
    CHECK(find(timeline(request_for({hasty}, supper, supper - 8h)),
               RemarkId::ThawWindowTightToday) == nullptr);
}

TEST_CASE("the soonest meal is said even where only the refrigerator thaws") {
    auto dish = stew();
    dish.package.thickness = Length::millimetres(60);
    auto request = request_for({dish}, supper, supper - 6h);
    request.thaw.water.celsius = 0.0; // no thawing in it
    const auto line = timeline(request);
    CHECK(find(line, RemarkId::NoWayInTime) != nullptr);
}

TEST_CASE(
    "what is eaten as it is gets no faster way, and no time from frozen that nobody publishes") {
    auto warmed = pork();
    warmed.served = Served::AsItIs;
    for (const auto& dish : {warmed, compote()}) { // nobody cooks the compote
        const auto eaten = timeline(request_for({dish}, supper, supper - 5h));
        CHECK(eaten.dishes[0].ways.empty());
        CHECK(find(eaten, RemarkId::NoWayInTime) != nullptr);
    }
    auto raw = compote(); // without a word on how it is cooked, which it is all the same
    raw.raw = true;
    CHECK_FALSE(timeline(request_for({raw}, supper, supper - 5h)).dishes[0].ways.empty());

    auto fish = pork();
    fish.counts_from_frozen = false;
    const auto late = timeline(request_for({fish}, supper, supper - 20h));
    REQUIRE_FALSE(late.dishes[0].ways.empty());
    CHECK(find(late, RemarkId::CookFromFrozen) == nullptr);
}

TEST_CASE("the middle stays hot after the cooking time, so cooking starts that much earlier") {
    auto held = pork();
    held.hold = 630s; // rounded up to 11 min
    const auto line = timeline(request_for({held}, supper, week_before));
    CHECK(lines_of(line).at(1) == "2026-12-03T17:19 start 0");
    CHECK(clock(line, line.dishes[0].cook->no_later) == "2026-12-03T17:29");
    const auto late = timeline(request_for({held}, supper, supper - 20h));
    CHECK(time_value(late, RemarkId::CookFromFrozen, 0) == "2026-12-03T16:49");
}

TEST_CASE("a bag that may be thawed too soon is to be looked at, when somebody is up") {
    auto hasty = pork();
    hasty.keeps_thawed = 12h;
    hasty.package.thickness = Length::millimetres(60);
    hasty.package.placing = Placing::Stacked;
    for (minutes late = 0min; late < days{1}; late += 45min) {
        const auto line = timeline(request_for({hasty}, supper + late, week_before));
        const auto& thaw = line.dishes[0].thaw.value();
        const auto look = std::ranges::find(line.events, TimelineStep::Look, &TimelineEvent::what);
        REQUIRE(look != line.events.end());
        CHECK(look->at >= thaw.at + thaw.lead.soonest);
        CHECK(look->at < line.dishes[0].cook->at);
        const auto local = on_clock(line.clock, look->at);
        CHECK(local - floor<days>(local) >= 7h);
        CHECK(local - floor<days>(local) <= 22h);
        CHECK(find(line, RemarkId::ThawWindowTightToday) != nullptr);
        CHECK(find(line, RemarkId::ThawWindowTight) == nullptr);
    }
    const auto line = timeline(request_for({pork()}, supper, week_before));
    CHECK(std::ranges::find(line.events, TimelineStep::Look, &TimelineEvent::what) ==
          line.events.end());
}

TEST_CASE("from frozen takes half as long again, and never goes into a slow cooker") {
    const auto in_oven = timeline(request_for({pork()}, supper, supper - 20h));
    CHECK(time_value(in_oven, RemarkId::CookFromFrozen, 0) == "2026-12-03T17:00");
    const auto* remark = find(in_oven, RemarkId::CookFromFrozen);
    CHECK(std::get<minutes>(remark->values.at(1)) == 90min);

    const auto slow = timeline(request_for({stew()}, supper, supper - 20h));
    CHECK(find(slow, RemarkId::ThawByWater) != nullptr);
    CHECK(find(slow, RemarkId::CookFromFrozen) == nullptr);

    auto frozen = stew();
    frozen.package.thaw.method = ThawMethod::FromFrozen;
    const auto refused = timeline(request_for({frozen}, supper, week_before));
    CHECK(find(refused, RemarkId::FrozenInSlowCooker) != nullptr);
    CHECK(refused.events.empty());
    CHECK(refused.dishes.size() == 1);
}

TEST_CASE("a dish meant for cooking from frozen has no thawing and its time as written") {
    auto frozen = pork();
    frozen.package.thaw.method = ThawMethod::FromFrozen;
    const auto line = timeline(request_for({frozen}, supper, week_before));
    CHECK(lines_of(line) ==
          std::vector<std::string>{"2026-12-03T17:30 start 0", "2026-12-03T18:30 ready 0"});
}

TEST_CASE("of a dish cooked from frozen without a time nobody says that it is thawed by then") {
    auto frozen = pork();
    frozen.package.thaw.method = ThawMethod::FromFrozen;
    frozen.package.cook->time.reset();
    const auto line = timeline(request_for({frozen}, supper, week_before));
    CHECK(find(line, RemarkId::FrozenCookTimeUnknown) != nullptr);
    CHECK(find(line, RemarkId::CookTimeUnknown) == nullptr);
    CHECK(lines_of(line) == std::vector<std::string>{"2026-12-03T18:30 ready 0"});
}

TEST_CASE(
    "a dish cooked from frozen that can no longer start has no events, and the soonest meal") {
    auto frozen = pork();
    frozen.package.thaw.method = ThawMethod::FromFrozen;
    const auto line = timeline(request_for({frozen}, supper, supper - 30min));
    CHECK(line.dishes[0].outlook == Outlook::TooLate);
    CHECK(line.events.empty());
    CHECK(time_value(line, RemarkId::FrozenStartTooLate, 1) == "2026-12-03T19:00");
    CHECK_FALSE(can_be_done(line));
}

TEST_CASE("cold water and microwave leave no keeping time: the window is one moment") {
    for (const auto method : {ThawMethod::ColdWater, ThawMethod::Microwave}) {
        auto quick = pork();
        quick.package.thaw.method = method;
        const auto line = timeline(request_for({quick}, supper, week_before));
        const auto thaw = line.dishes[0].thaw.value();
        CHECK(thaw.no_earlier == thaw.no_later);
        CHECK(thaw.no_later == line.dishes[0].cook->at - thaw.lead.lead);
        CHECK(find(line, RemarkId::CookAtOnce) != nullptr);
        CHECK((find(line, RemarkId::ColdWaterRules) != nullptr) ==
              (method == ThawMethod::ColdWater));
        CHECK(find(line, RemarkId::ThawWindowTight) == nullptr);
    }
}

TEST_CASE("finishing times that do not fit the cooking are moved and told") {
    auto dish = pork(); // an hour in the middle
    dish.package.finish = {added("apple", {When::Anchor::BeforeEnd, 90min}),
                           added("sage", {When::Anchor::AfterStart, 2h}),
                           added("salt", {When::Anchor::AfterStart, minutes::min()}),
                           added("pepper", {When::Anchor::BeforeEnd, minutes::max()})};
    const auto line = timeline(request_for({dish}, supper, week_before));
    CHECK(find(line, RemarkId::FinishBeforeStart)->finish == 0U);
    CHECK(find(line, RemarkId::FinishAfterReady)->finish == 1U);
    CHECK(find(line, RemarkId::FinishTimeUnknown)->finish == 2U);
    std::vector<std::string> adds;
    for (const auto& event : line.events) {
        if (event.what == TimelineStep::Add)
            adds.push_back(line_of(line, event));
    }
    CHECK(adds == std::vector<std::string>{"2026-12-03T17:30 add 0.0", "2026-12-03T18:30 add 0.1"});
}

TEST_CASE("without a usable cooking time only what counts from the end can be told") {
    for (const std::optional<TimeRange> time :
         {std::optional<TimeRange>{}, std::optional{TimeRange{9h, 7h}},
          std::optional{TimeRange{-1min, 1h}},
          std::optional{TimeRange{minutes::max(), minutes::max()}}}) {
        auto dish = stew();
        dish.package.cook->time = time;
        const auto line = timeline(request_for({dish}, supper, week_before));
        CHECK(find(line, RemarkId::CookTimeUnknown) != nullptr);
        CHECK(find(line, RemarkId::FrozenCookTimeUnknown) == nullptr);
        CHECK(lines_of(line) ==
              std::vector<std::string>{"2026-12-02T11:30 thaw 0", "2026-12-03T18:20 add 0.1",
                                       "2026-12-03T18:30 ready 0", "2026-12-03T18:30 add 0.4"});
    }
}

TEST_CASE("what is not known of a bag is told with the lead that was taken") {
    auto dish = pork();
    dish.package.thickness.reset();
    CHECK(find(timeline(request_for({dish}, supper, week_before)),
               RemarkId::ThawThicknessUnknown) != nullptr);
    dish.package.weight.reset();
    const auto line = timeline(request_for({dish}, supper, week_before));
    const auto* remark = find(line, RemarkId::ThawSizeUnknown);
    REQUIRE(remark != nullptr);
    CHECK(std::get<minutes>(remark->values.at(0)) == 24h);
    CHECK(remark->dish == 0U);
}

TEST_CASE("a refrigerator set too cold to thaw in is told, and no thaw is planned") {
    auto request = request_for({pork()}, supper, week_before);
    request.thaw.refrigerator.celsius = 0.0;
    const auto line = timeline(request);
    CHECK(find(line, RemarkId::ThawNotReckoned) != nullptr);
    CHECK_FALSE(line.dishes[0].thaw.has_value());
}

TEST_CASE("every remark has one row and a key of its own") {
    std::set<std::string_view> keys;
    for (const auto& rule : remark_rules()) {
        CAPTURE(rule.key);
        CHECK(keys.insert(rule.key).second);
        CHECK(&rule_of(rule.id) == &rule);
    }
    CHECK(remark_rules().size() == static_cast<std::size_t>(RemarkId::SharedAppliance) + 1);
}

TEST_CASE("the middle of a range and half as long again round up to whole minutes") {
    CHECK(middle_of({7h, 9h}) == 8h);
    CHECK(middle_of({10min, 11min}) == 11min);
    CHECK(from_frozen({45min, 61min}) == TimeRange{70min, 95min});
}

TEST_CASE("a bag that was to thaw in a stack may still do so on a rack, where there is time") {
    auto stacked = pork();
    stacked.package.placing = Placing::Stacked;
    const auto on_a_rack =
        timeline(request_for({pork()}, supper, week_before)).dishes[0].thaw->lead.lead;
    const auto late = timeline(request_for({stacked}, supper, supper - on_a_rack - 3h));
    REQUIRE_FALSE(late.dishes[0].ways.empty());
    const auto& way = late.dishes[0].ways.front();
    CHECK(way.method == ThawMethod::Refrigerator);
    CHECK(way.start - way.begin == on_a_rack);
    CHECK(find(late, RemarkId::ThawOnRack) != nullptr);
    CHECK(can_be_done(late));
    // What would lie thawed for longer than it keeps does not.
    stacked.keeps_thawed = 1h;
    const auto hardly = timeline(request_for({stacked}, supper, supper - on_a_rack - 3h));
    CHECK(find(hardly, RemarkId::ThawOnRack) == nullptr);
}

TEST_CASE("an appliance that two things need at once is told, with from when to when") {
    const auto shared = [](std::vector<TimelineDish> dishes, LocalMinute now = week_before) {
        std::vector<std::string> told;
        const auto line = timeline(request_for(std::move(dishes), supper, now));
        for (const auto& remark : line.remarks) {
            if (remark.id != RemarkId::SharedAppliance)
                continue;
            CHECK_FALSE(remark.dish); // it is of all that are named
            told.push_back(clock(line, std::get<Instant>(remark.values.at(0))) + " " +
                           clock(line, std::get<Instant>(remark.values.at(1))));
            for (const auto& part : std::get<std::vector<DishPart>>(remark.values.at(2)))
                told.back() += " dish " + std::to_string(part.dish) +
                               (part.side ? " side " + std::to_string(*part.side) : "");
        }
        return told;
    };
    using Told = std::vector<std::string>;
    auto bake = pork(); // an hour in the oven
    bake.package.cook->time = TimeRange{30min, 30min};
    CHECK(shared({pork(), bake}) == Told{"2026-12-03T18:00 2026-12-03T18:30 dish 0 dish 1"});
    CHECK(shared({bake, pork()}) == Told{"2026-12-03T18:00 2026-12-03T18:30 dish 0 dish 1"});
    CHECK(shared({pork(), stew(), compote(), bake}) ==
          Told{"2026-12-03T18:00 2026-12-03T18:30 dish 0 dish 3"});
    CHECK(shared({pork(), stew()}) == Told{});
    CHECK(shared({stew(), stew()}, supper - 1h) == Told{}); // neither can be done any more
    auto in_pot = bake;
    in_pot.package.cook->vessel = Vessel::Pot;
    CHECK(shared({in_pot, in_pot}) == Told{});
    Side bread;
    bread.takes = {20min, 20min};
    bread.vessel = Vessel::Oven;
    auto with_bread = pork();
    with_bread.package.sides = {bread};
    CHECK(shared({with_bread}) == Told{"2026-12-03T18:10 2026-12-03T18:30 dish 0 dish 0 side 0"});
    auto with_rolls = with_bread; // three at once are told once
    with_rolls.package.sides.push_back(bread);
    with_rolls.package.sides[1].takes = {10min, 10min};
    CHECK(shared({with_rolls}) ==
          Told{"2026-12-03T18:10 2026-12-03T18:30 dish 0 dish 0 side 0 dish 0 side 1"});
    with_bread.package.sides[0].ready = {When::Anchor::AtStart, 0min}; // out as the dish goes in
    CHECK(shared({with_bread}) == Told{});
}

} // namespace timeline_test
