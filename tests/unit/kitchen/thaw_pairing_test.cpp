#include "kitchen/cautions/caution_topics.h"
#include "kitchen/cautions/cautions.h"
#include "kitchen/cooking/thaw_pairing.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>
#include <utility>

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

StorageTable one_class() {
    StorageTable table;
    table.rows.push_back(
        {"stew", "us", std::chrono::months{2}, std::chrono::months{3}, "stew", "a list", "read"});
    table.classes.push_back({"stew", FoodKind::CookedDish});
    return table;
}

/// How a day has to be written so that its heat is this one.
Cook cook_for(Heat heat) {
    Cook cook;
    cook.until = Temperature{74, TemperatureScale::Celsius};
    cook.where = KeyPath{"package[1].cook"};
    cook.in = "vessel";
    switch (heat) {
    case Heat::SlowCooker: cook.vessel = Vessel::SlowCooker; break;
    case Heat::Low:
        cook.vessel = Vessel::Oven;
        cook.setting = "120 °C";
        break;
    case Heat::Oven:
        cook.vessel = Vessel::Oven;
        cook.setting = "190 °C";
        break;
    case Heat::Pan: cook.vessel = Vessel::Pan; break;
    case Heat::Pot: cook.vessel = Vessel::Pot; break;
    case Heat::Microwave: cook.vessel = Vessel::Microwave; break;
    case Heat::PressureCooker: cook.vessel = Vessel::PressureCooker; break;
    case Heat::Grill: cook.vessel = Vessel::Grill; break;
    case Heat::Steamer: cook.vessel = Vessel::Steamer; break;
    case Heat::Other:
    case Heat::Nowhere: break;
    }
    return cook;
}

Package package_for(ThawMethod method, Heat heat) {
    Package package;
    package.dish = "Bean stew";
    package.food = {"stew"};
    package.where = KeyPath{"package[1]"};
    package.thaw.method = method;
    package.thaw.where = package.where.key("thaw");
    if (heat != Heat::Nowhere) {
        package.cook = cook_for(heat);
    }
    return package;
}

std::set<std::string> ids_for(const Package& package) {
    const auto table = one_class();
    const KeepUntil keep{Date{}, DateBasis::SetByCook, {}};
    std::set<std::string> ids;
    for (const auto& caution : cautions({package, Date{}, keep, table, {}})) {
        ids.insert(caution.id);
    }
    return ids;
}

/// The one caution that a passage must give, and the only one of its like; empty where none.
std::string caution_for(Passage passage, ThawMethod method, Heat heat) {
    const bool slow = heat == Heat::SlowCooker;
    switch (passage) {
    case Passage::Free: return "";
    case Passage::KeptCold: return slow ? "slow-cooker-thaw-first" : "low-heat-thaw-first";
    case Passage::AtOnce: return "";
    case Passage::AtOnceHigh: return "slow-cooker-from-water";
    case Passage::AtOnceHot: return "low-heat-from-water";
    case Passage::Refused:
        if (method == ThawMethod::FromFrozen) {
            return slow ? "slow-cooker-frozen" : "low-heat-frozen";
        }
        return slow ? "slow-cooker-from-microwave" : "low-heat-from-microwave";
    case Passage::FrozenByBook: return "frozen-pressure-cooker";
    case Passage::FrozenUneven: return "frozen-grill";
    }
    return "?";
}

std::vector<std::string> pairing_ids() {
    std::vector<std::string> all;
    for (const auto& rule : pairing_rules()) {
        all.emplace_back(rule.id);
    }
    return all;
}

constexpr ThawMethod methods[] = {ThawMethod::Refrigerator, ThawMethod::ColdWater,
                                  ThawMethod::Microwave, ThawMethod::FromFrozen};

template <class Check>
void for_every_pair(Check check) {
    for (const auto method : methods) {
        for (int i = 0; i <= static_cast<int>(last_heat); ++i) {
            const auto heat = static_cast<Heat>(i);
            CAPTURE(static_cast<int>(method));
            CAPTURE(i);
            check(method, heat);
        }
    }
}

} // namespace

TEST_CASE("every way to thaw with every heat has its row, its caution and its source") {
    const auto all = pairing_ids();
    for_every_pair([&](ThawMethod method, Heat heat) {
        const auto& row = pairing(method, heat);
        CHECK(row.method == method);
        CHECK(row.heat == heat);
        CHECK_FALSE(row.source.empty());
        const auto package = package_for(method, heat);
        CHECK(heat_of(package) == heat);
        const auto given = ids_for(package);
        const auto expected = caution_for(row.passage, method, heat);
        for (const auto& id : all) {
            CAPTURE(id);
            CHECK(given.contains(id) == (id == expected));
        }
    });
}

TEST_CASE("each pair passes as the agencies say, written down a second time") {
    // In the order of Heat. USDA FSIS, Slow Cookers and Food Safety: always thaw before; USDA FSIS,
    // The Big Thaw, 2013: from water or microwave cook at once, from the refrigerator at leisure,
    // cooking from frozen is safe; FDA Food Code 3-501.13 (C): from the microwave straight to
    // conventional cooking. Pressure cooker, grill, steamer from frozen: common practice, no
    // source.
    using enum Passage;
    const struct {
        ThawMethod method;
        std::vector<Passage> passages;
    } rows[] = {
        {ThawMethod::Refrigerator,
         {KeptCold, KeptCold, Free, Free, Free, Free, Free, Free, Free, Free, Free}},
        {ThawMethod::ColdWater,
         {AtOnceHigh, AtOnceHot, AtOnce, AtOnce, AtOnce, AtOnce, AtOnce, AtOnce, AtOnce, AtOnce,
          AtOnce}},
        {ThawMethod::Microwave,
         {Refused, Refused, AtOnce, AtOnce, AtOnce, AtOnce, AtOnce, AtOnce, AtOnce, AtOnce,
          AtOnce}},
        {ThawMethod::FromFrozen,
         {Refused, Refused, Free, Free, Free, Free, FrozenByBook, FrozenUneven, Free, Free, Free}},
    };
    for (const auto& row : rows) {
        CAPTURE(static_cast<int>(row.method));
        REQUIRE(row.passages.size() == static_cast<std::size_t>(last_heat) + 1);
        for (std::size_t heat = 0; heat < row.passages.size(); ++heat) {
            CAPTURE(heat);
            CHECK(pairing(row.method, static_cast<Heat>(heat)).passage == row.passages[heat]);
        }
    }
}

TEST_CASE("food thawed in water or microwave is cooked at once, and never told to be kept") {
    for_every_pair([](ThawMethod method, Heat heat) {
        const auto given = ids_for(package_for(method, heat));
        const bool fast = method == ThawMethod::ColdWater || method == ThawMethod::Microwave;
        CHECK(given.contains("thaw-cook-at-once") == fast);
        const bool kept =
            given.contains("slow-cooker-thaw-first") || given.contains("low-heat-thaw-first");
        CHECK_FALSE((fast && kept));
    });
}

TEST_CASE("nothing frozen and nothing from the microwave goes into gentle heat") {
    for (const auto method : {ThawMethod::Microwave, ThawMethod::FromFrozen}) {
        for (const auto heat : {Heat::SlowCooker, Heat::Low}) {
            CHECK(pairing(method, heat).passage == Passage::Refused);
        }
    }
}

TEST_CASE("gentle heat is known by its words and by its degrees, in three languages") {
    struct Case {
        Vessel vessel;
        const char* in;
        const char* setting;
        bool low;
    };
    const Case cases[] = {
        {Vessel::Oven, "oven", "150 °C", true},
        {Vessel::Oven, "oven", "160 °C", false},
        {Vessel::Oven, "oven", "300 °F, covered", true},
        {Vessel::Oven, "oven", "325 °F", false},
        {Vessel::Oven, "oven", "gas mark 2", true},
        {Vessel::Oven, "oven", "gas mark 1/2", true},
        {Vessel::Oven, "oven", "gas mark 4", false},
        {Vessel::Oven, "oven", "", false},
        {Vessel::Grill, "smoker grill", "225 °F", true},
        {Vessel::Other, "immersion circulator", "60 °C", true},
        {Vessel::Pot, "pot", "sous vide", true},
        {Vessel::Pot, "olla", "mantener caliente", true},
        {Vessel::Oven, "Backofen", "Niedertemperatur", true},
        {Vessel::Other, "Wasserbad", "", true},
        {Vessel::Pan, "pan", "warm", true},
        {Vessel::Pan, "pan", "medium heat", false},
        {Vessel::PressureCooker, "cooker", "slow cook", true},
        {Vessel::PressureCooker, "cooker", "high pressure", false},
        {Vessel::Oven, "oven", "190 °C, then keep it in a warm place", false},
        {Vessel::Oven, "oven", "minimum", true},
        {Vessel::Oven, "Ofen", "kleinste Stufe", true},
        {Vessel::Oven, "horno", "muy bajo", true},
        {Vessel::Oven, "Ofen", "85 Grad", true},
        {Vessel::Oven, "oven", "70", true},
        {Vessel::Oven, "oven", "Gas 1", true},
        {Vessel::Oven, "oven at 210 °F", "", true},
        {Vessel::Oven, "oven", "220 °C for 20 min, then 90 °C", true},
        {Vessel::Oven, "oven", "220 °C for 20 min, then 150 °C", false},
        {Vessel::Oven, "oven", "200 °C, lowest shelf", false},
        {Vessel::Oven, "kleiner Backofen", "", false},
        {Vessel::Oven, "oven, 60 min", "180", false},
    };
    for (const auto& c : cases) {
        CAPTURE(c.in);
        CAPTURE(c.setting);
        Package package;
        package.cook = Cook{};
        package.cook->vessel = c.vessel;
        package.cook->in = c.in;
        package.cook->setting = c.setting;
        CHECK((heat_of(package) == Heat::Low) == c.low);
    }
}

TEST_CASE("the gentlest heat that a step names counts") {
    const auto heat = [](const char* step) {
        Package package;
        package.cook = Cook{};
        package.cook->vessel = Vessel::Oven;
        package.cook->in = "oven";
        package.cook->until = Temperature{74, TemperatureScale::Celsius};
        package.cook->steps = {step};
        return heat_of(package);
    };
    CHECK(heat("Heat the oven to 95 °C and roast it all day.") == Heat::Low);
    CHECK(heat("Bei 85 Grad garen.") == Heat::Low);
    CHECK(heat("Then into the slow cooker.") == Heat::SlowCooker);
    CHECK(heat("Roast until it is 80 °C in the middle.") == Heat::Oven);
    CHECK(heat("Roast, then keep it warm in the oven at 80 °C.") == Heat::Oven);
    CHECK(heat("Never in a slow cooker.") == Heat::Oven);
}
