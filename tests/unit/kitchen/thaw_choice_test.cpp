// Several ways to thaw: each with its own time and cautions, and the first that serves.

#include "kitchen/cooking/other_thaw.h"
#include "kitchen/figures.h"
#include "kitchen/plan.h"
#include "kitchen/timeline/timeline.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace {

StorageTable table() {
    StorageTable table;
    table.rows.push_back({"soup or stew", "us", months{2}, months{3}, "soup", "a list", "read"});
    table.classes.push_back({"soup or stew", FoodKind::CookedDish});
    return table;
}

KeyPath method_place(std::size_t position) {
    return KeyPath{"package[1].thaw.method"}.index(position);
}

/// A stew of 1.4 kg that thaws in the first of these ways, or the others.
Package stew(std::vector<ThawMethod> methods) {
    Package package;
    package.dish = "Bean stew";
    package.servings = 4;
    package.food = {"soup or stew"};
    package.weight = Mass{1400};
    package.thickness = Length::millimetres(25);
    package.where = KeyPath{"package[1]"};
    package.thaw.where = KeyPath{"package[1].thaw"};
    package.thaw.method = methods.front();
    package.thaw.method_where = method_place(0);
    for (std::size_t i = 1; i < methods.size(); ++i) {
        package.thaw.others.push_back({methods[i], method_place(i)});
    }
    package.cook = Cook{};
    package.cook->in = "pot";
    package.cook->vessel = Vessel::Pot;
    package.cook->time = TimeRange{30min, 40min};
    package.cook->where = KeyPath{"package[1].cook"};
    return package;
}

Plan planned(const Package& package, Diagnostics& faults) {
    return plan({2026y / 10 / 24, "Orchard house", std::nullopt, {package}}, table(), faults);
}

PlannedPackage sound(const Package& package) {
    Diagnostics faults;
    auto line = planned(package, faults);
    REQUIRE(faults.empty());
    return line.packages.at(0);
}

using enum ThawMethod;

} // namespace

TEST_CASE("each way to thaw has the time that it has alone") {
    const auto choice = sound(stew({Refrigerator, ColdWater, Microwave}));
    REQUIRE(choice.other_thaws.size() == 2);
    CHECK(thaw_time(choice) == thaw_time(sound(stew({Refrigerator}))));
    CHECK(thaw_time(choice.other_thaws[0]) == thaw_time(sound(stew({ColdWater}))));
    CHECK(thaw_time(choice.other_thaws[1]) == thaw_time(sound(stew({Microwave}))));
    CHECK(thaw_time(choice.other_thaws[0]) != thaw_time(choice.other_thaws[1]));
    CHECK_FALSE(cook_within(choice.other_thaws[0]).has_value()); // cooked at once
}

TEST_CASE("no caution of any way is lost, and each says which ways it is for") {
    const auto choice = sound(stew({Refrigerator, ColdWater, Microwave}));
    const auto find = [&](std::string_view id) {
        const auto found = std::ranges::find(choice.cautions, id, &Caution::id);
        REQUIRE(found != choice.cautions.end());
        return found->thawed_by;
    };
    for (const auto method : {Refrigerator, ColdWater, Microwave}) {
        for (const auto& caution : sound(stew({method})).cautions) {
            CAPTURE(caution.id);
            CHECK(std::ranges::find(choice.cautions, caution.id, &Caution::id) !=
                  choice.cautions.end());
        }
    }
    CHECK(find("thaw-cook-at-once") == std::vector{ColdWater, Microwave});
    CHECK(find("cold-water-thaw") == std::vector{ColdWater});
    CHECK(find("thaw-on-a-plate").empty());
    // One way alone says it of itself.
    for (const auto& caution : sound(stew({ColdWater})).cautions) {
        CHECK(caution.thawed_by.empty());
    }
}

TEST_CASE("a way that is not safe is refused where it stands, whatever the others are") {
    auto thick = stew({Refrigerator, ColdWater});
    thick.thickness = Length::millimetres(90);
    thick.weight = Mass{6000};
    Diagnostics faults;
    CHECK(planned(thick, faults).packages.empty());
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].key == method_place(1));
    CHECK(faults[0].message.find("in cold water this bag takes") != std::string::npos);

    auto slow = stew({Refrigerator, FromFrozen});
    slow.cook->in = "slow cooker";
    slow.cook->vessel = Vessel::SlowCooker;
    slow.cook->time = TimeRange{7h, 9h};
    faults.clear();
    CHECK(planned(slow, faults).packages.empty());
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].key == method_place(1));
}

TEST_CASE("what stands against all ways is said once") {
    auto wrong = stew({Refrigerator, ColdWater, Microwave});
    wrong.food.clear();
    wrong.use_by = 2025y / 1 / 1;
    Diagnostics faults;
    planned(wrong, faults);
    CHECK(faults.size() == 1);
}

TEST_CASE("a cooking time for thawed food is none from frozen") {
    const auto choice = sound(stew({Refrigerator, FromFrozen}));
    CHECK(choice.package.cook->time == TimeRange{30min, 40min});
    CHECK_FALSE(choice.other_thaws[0].package.cook->time.has_value());
    // And back.
    const auto frozen_first = sound(stew({FromFrozen, Refrigerator}));
    CHECK(frozen_first.package.cook->time.has_value());
    CHECK_FALSE(frozen_first.other_thaws[0].package.cook->time.has_value());
}

TEST_CASE("of raw meat in an oven the published half as long again is taken from frozen") {
    // USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013, "Cooking Without Thawing" (read in a
    // copy): about 50 % longer.
    StorageTable raw;
    raw.classes.push_back({"raw roasts", FoodKind::RawCut});
    auto roast = stew({Refrigerator, FromFrozen});
    roast.food = {"raw roasts"};
    roast.cook->vessel = Vessel::Oven;
    roast.cook->time = TimeRange{60min, 80min};
    const auto frozen = thawed_by(roast, roast.thaw.others[0], raw);
    CHECK(frozen.cook->time == TimeRange{60min, 80min});
    CHECK(frozen.cook->time_from == TimeFrom::Thawed); // turned over when it is planned
}

TEST_CASE(
    "moments of one minute keep their words where another way to thaw cooks for another time") {
    auto alone = stew({Refrigerator, ColdWater});
    alone.cook->time = TimeRange{2h, 2h};
    Finish bacon;
    bacon.add.item = "bacon";
    bacon.when = {When::Anchor::AfterStart, 90min};
    Finish stock;
    stock.add.item = "stock";
    stock.when = {When::Anchor::BeforeEnd, 30min};
    alone.finish = {bacon, stock};
    CHECK(sound(alone).finish[1].when == bacon.when); // one minute, said in one way
    auto choice = alone;
    choice.thaw = stew({Refrigerator, FromFrozen}).thaw;
    CHECK(sound(choice).finish[1].when == stock.when);
    // What stays hot after its time is ready later: what counts from the end goes in later, too.
    alone.cook->until = Temperature{80.0};
    alone.cook->hold = 30min;
    CHECK(sound(alone).finish[0].add.item == "bacon");
    CHECK(sound(alone).finish[1].when == stock.when);
    alone.finish = {stock, bacon};
    alone.finish[0].when.offset = 40min; // at 1 h 50 min
    alone.finish[1].when.offset = 2h;
    CHECK(sound(alone).finish[0].add.item == "stock");
    alone.finish[0].when.offset = 10min;
    CHECK(sound(alone).finish[0].add.item == "bacon");
}

namespace {

const LocalClock clock_of_orchard{60min, {}};

TimelineDish dish_by(ThawMethod method) {
    return {.package = stew({method}), .bags = {"BS-1"}};
}

TimelineRequest supper_asked_at(LocalMinute now) {
    auto dish = dish_by(Refrigerator);
    dish.other_thaws = {dish_by(ColdWater), dish_by(Microwave)};
    return {.dishes = {dish},
            .eat = local_days{2026y / December / 3} + 18h + 30min,
            .now = read_clock(clock_of_orchard, now).instant,
            .clock = clock_of_orchard};
}

ThawMethod chosen_at(LocalMinute now) {
    return with_thaw_in_time(supper_asked_at(now)).dishes.at(0).package.thaw.method;
}

} // namespace

TEST_CASE("a dinner takes the first way on the label that serves, and says what was missed") {
    const LocalMinute supper = local_days{2026y / December / 3} + 18h + 30min;
    CHECK(chosen_at(supper - days{6}) == Refrigerator);
    CHECK(chosen_at(supper - 8h) == ColdWater);
    CHECK(chosen_at(supper - 80min) == Microwave);
    const auto late = timeline(with_thaw_in_time(supper_asked_at(supper - 8h)));
    const auto remark = std::ranges::find(late.remarks, RemarkId::OtherThaw, &TimelineRemark::id);
    REQUIRE(remark != late.remarks.end());
    CHECK(std::get<Instant>(remark->values.at(0)) <
          read_clock(clock_of_orchard, supper - 8h).instant);
    CHECK(late.dishes[0].outlook == Outlook::InTime);
    // In time for the first nothing is said.
    const auto early = timeline(with_thaw_in_time(supper_asked_at(supper - days{6})));
    CHECK(std::ranges::find(early.remarks, RemarkId::OtherThaw, &TimelineRemark::id) ==
          early.remarks.end());
}

TEST_CASE("where no way on the label serves, the dish stays as it is and is late") {
    const LocalMinute supper = local_days{2026y / December / 3} + 18h + 30min;
    const auto line = timeline(with_thaw_in_time(supper_asked_at(supper - 20min)));
    CHECK_FALSE(can_be_done(line));
    CHECK(line.dishes[0].outlook != Outlook::InTime);
}

TEST_CASE(
    "a way of which no cooking time is known does not serve where one is known of the first") {
    const LocalMinute supper = local_days{2026y / December / 3} + 18h + 30min;
    auto asked = supper_asked_at(supper - 8h);
    asked.dishes[0].other_thaws = {dish_by(FromFrozen), dish_by(ColdWater)};
    asked.dishes[0].other_thaws[0].package.cook->time.reset();
    CHECK(with_thaw_in_time(asked).dishes.at(0).package.thaw.method == ColdWater);
    asked.dishes[0].other_thaws.pop_back();
    CHECK(with_thaw_in_time(asked).dishes.at(0).package.thaw.method == Refrigerator);
    // Where none is known in any way, it is as good as the first; so is what is not cooked.
    asked.dishes[0].package.cook->time.reset();
    CHECK(with_thaw_in_time(asked).dishes.at(0).package.thaw.method == FromFrozen);
}
