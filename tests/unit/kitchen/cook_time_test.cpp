#include "kitchen/cooking/cook_time.h"
#include "kitchen/plan.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace cook_time_test {

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono_literals;

namespace {

StorageTable table() {
    StorageTable t;
    for (const auto& [food, kind] : {std::pair{"raw chops", FoodKind::RawCut},
                                     {"raw chicken", FoodKind::RawPoultry},
                                     {"raw ground meat", FoodKind::RawGround},
                                     {"lean fish", FoodKind::RawFish},
                                     {"clams", FoodKind::RawShellfish},
                                     {"soup or stew", FoodKind::CookedDish},
                                     {"cooked meat", FoodKind::Leftover},
                                     {"hot dogs", FoodKind::ReadyToEat},
                                     {"quiche", FoodKind::EggDish},
                                     {"bread", FoodKind::Other}}) {
        t.classes.push_back({food, kind});
        t.rows.push_back(
            {food, "us", std::chrono::months{2}, std::chrono::months{3}, food, "a list", "read"});
    }
    return t;
}

Package frozen_chops() {
    Package package;
    package.dish = "Juniper chops";
    package.servings = 2;
    package.food = {"raw chops"};
    package.where = KeyPath{"package[1]"};
    package.thaw.method = ThawMethod::FromFrozen;
    package.cook = Cook{};
    package.cook->in = "oven";
    package.cook->vessel = Vessel::Oven;
    package.cook->time = TimeRange{40min, 45min};
    package.cook->time_from = TimeFrom::Thawed;
    package.cook->until = Temperature{74.0, TemperatureScale::Celsius};
    return package;
}

/// Its planned package; nothing where it is refused, which `faults` then says.
std::optional<PlannedPackage> planned(const Package& package, Diagnostics& faults) {
    auto result =
        plan({std::chrono::year{2026} / 10 / 17, "", std::nullopt, {package}}, table(), faults);
    return result.packages.empty() ? std::nullopt : std::optional{result.packages.front()};
}

} // namespace

TEST_CASE("a time for thawed meat becomes one from frozen once, half as long again") {
    // USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013, "Cooking Without Thawing", read in a
    // copy: about 50 % longer for meats and poultry. 40 to 45 min: 60 to 67.5, up to 5 min.
    Diagnostics faults;
    const auto chops = planned(frozen_chops(), faults);
    REQUIRE(chops);
    CHECK(chops->package.cook->time == TimeRange{60min, 70min});
    CHECK(chops->package.cook->time_from == TimeFrom::Frozen);
    const auto again = with_time_as_cooked(chops->package, table());
    CHECK(again.cook->time == TimeRange{60min, 70min});
}

TEST_CASE("a time counts from how the food starts to cook where nothing is said") {
    Diagnostics faults;
    auto package = frozen_chops();
    package.cook->time_from.reset();
    CHECK(planned(package, faults)->package.cook->time == TimeRange{40min, 45min});
    package.cook->time_from = TimeFrom::Frozen;
    CHECK(planned(package, faults)->package.cook->time == TimeRange{40min, 45min});
    package.thaw.method = ThawMethod::Refrigerator;
    package.cook->time_from = TimeFrom::Thawed;
    CHECK(planned(package, faults)->package.cook->time == TimeRange{40min, 45min});
    CHECK(faults.empty());
}

TEST_CASE("where nothing is published that turns a time over, the cook must give it") {
    struct Case {
        std::string food;
        Vessel vessel;
        bool turned;
    };
    for (const auto& [food, vessel, turned] : {Case{"raw chicken", Vessel::Pan, true},
                                               {"raw ground meat", Vessel::Pot, true},
                                               {"raw chops", Vessel::PressureCooker, false},
                                               {"raw chops", Vessel::Microwave, false},
                                               {"raw chops", Vessel::Grill, false},
                                               {"raw chops", Vessel::Steamer, false},
                                               {"raw chops", Vessel::Other, false},
                                               {"lean fish", Vessel::Oven, false},
                                               {"soup or stew", Vessel::Pot, false},
                                               {"cooked meat", Vessel::Oven, false}}) {
        CAPTURE(food);
        CAPTURE(static_cast<int>(vessel));
        auto package = frozen_chops();
        package.food = {food};
        package.cook->vessel = vessel;
        Diagnostics faults;
        CHECK(planned(package, faults).has_value() == turned);
        const bool said = std::ranges::any_of(faults, [](const Diagnostic& fault) {
            return fault.key == KeyPath{"package[1].cook.time_from"} ||
                   fault.message.find("for thawed food") != std::string::npos;
        });
        CHECK(said == !turned);
    }
}

TEST_CASE("a time for frozen food of a bag that is thawed first is refused") {
    auto package = frozen_chops();
    package.thaw.method = ThawMethod::ColdWater;
    package.cook->time_from = TimeFrom::Frozen;
    Diagnostics faults;
    CHECK(!planned(package, faults));
    REQUIRE(!faults.empty());
    CHECK(faults.front().message ==
          "the cooking time is for frozen food, but this bag is thawed first");
}

TEST_CASE("an unsaid time from frozen is asked about where a guess is far off") {
    for (const auto vessel : {Vessel::PressureCooker, Vessel::Microwave, Vessel::Oven}) {
        auto package = frozen_chops();
        package.cook->vessel = vessel;
        package.cook->time_from.reset();
        Diagnostics faults;
        const auto result = planned(package, faults);
        REQUIRE(result);
        const bool asked = std::ranges::find(result->cautions, "time-from-unsaid", &Caution::id) !=
                           result->cautions.end();
        CHECK(asked == (vessel != Vessel::Oven));
    }
}

TEST_CASE("a bag with one raw part is raw, whatever else is in it") {
    const auto t = table();
    for (const auto* food : {"raw chops", "raw chicken", "raw ground meat", "lean fish", "clams"}) {
        CAPTURE(food);
        const std::vector<std::string> alone{food};
        const std::vector<std::string> kit{"bread", "cooked meat", food};
        CHECK(any_raw(t, alone));
        CHECK(any_raw(t, kit));
    }
    const std::vector<std::string> cooked{"soup or stew", "cooked meat", "hot dogs", "quiche",
                                          "bread"};
    CHECK(!any_raw(t, cooked));
    CHECK(!any_raw(t, std::vector<std::string>{}));
}

} // namespace cook_time_test
