// Every figure at which a caution begins, from both sides.

#include "kitchen/cautions/cautions.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <functional>
#include <string>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;

namespace {

StorageTable table(const std::string& rule_set) {
    StorageTable t;
    t.rule_set = rule_set;
    const std::pair<const char*, FoodKind> classes[] = {{"stew", FoodKind::CookedDish},
                                                        {"cooked meat", FoodKind::Leftover},
                                                        {"raw chops", FoodKind::RawCut},
                                                        {"cooked ham", FoodKind::ReadyToEat}};
    for (const auto& [food, kind] : classes) {
        t.rows.push_back({food, rule_set, months{2}, months{3}, food, "a list", "read"});
        t.classes.push_back({food, kind});
    }
    return t;
}

Temperature celsius(double degrees) {
    return {degrees, TemperatureScale::Celsius};
}

struct Dish {
    Package package;
    KitchenSettings settings;
    std::string rule_set = "us";
};

/// Something plain, thawed in the refrigerator and heated through in a pot.
Dish plain_dish() {
    Dish dish;
    auto& package = dish.package;
    package.dish = "Barley";
    package.servings = 4;
    package.food = {"stew"};
    package.where = KeyPath{"package[1]"};
    package.thaw.where = package.where.key("thaw");
    Cook cook;
    cook.in = "pot";
    cook.vessel = Vessel::Pot;
    cook.until = celsius(74);
    cook.where = package.where.key("cook");
    package.cook = cook;
    return dish;
}

bool gives(const std::string& id, const std::function<void(Dish&)>& change) {
    auto dish = plain_dish();
    change(dish);
    const Date made = 2026y / 10 / 17;
    const KeepUntil keep{made, DateBasis::SetByCook, {}};
    const auto foods = table(dish.rule_set);
    const auto all = cautions({dish.package, made, keep, foods, dish.settings, made});
    return std::ranges::find(all, id, &Caution::id) != all.end();
}

void in_slow_cooker(Dish& dish) {
    dish.package.cook->in = "slow cooker";
    dish.package.cook->vessel = Vessel::SlowCooker;
}

} // namespace

TEST_CASE("high up begins at 3000 ft, which people write as 914 m") {
    // USDA FSIS, High Altitude Cooking and Food Safety: at 3,000 feet and above.
    for (const int metres : {0, 500, 913, 914, 915, 3000}) {
        CAPTURE(metres);
        for (const auto* id : {"high-altitude", "high-altitude-slow-cooker"}) {
            CHECK(gives(id, [&](Dish& dish) {
                      dish.settings.altitude_metres = metres;
                      if (std::string{id} == "high-altitude-slow-cooker") {
                          in_slow_cooker(dish);
                      }
                  }) == (metres >= 914));
        }
    }
}

TEST_CASE("dried beans are refused in an oven of up to 125 °C") {
    // Ours: a covered dish stays below the boil for hours there.
    for (const int degrees : {80, 100, 124, 125, 126, 150, 190}) {
        CAPTURE(degrees);
        CHECK(gives("beans-dry", [&](Dish& dish) {
                  dish.package.cook->in = "oven";
                  dish.package.cook->vessel = Vessel::Oven;
                  dish.package.cook->setting = std::to_string(degrees) + " °C";
                  dish.package.ingredients.push_back(
                      {parse_quantity("300 g dried kidney beans").value(),
                       IngredientDay::PackingDay,
                       {}});
              }) == (degrees <= 125));
    }
}

TEST_CASE("beans are safe from the boil of 30 minutes, in the UK of 10") {
    // FDA, Bad Bug Book, 2012, phytohaemagglutinin: 30 minutes; UK Food Standards Agency: 10.
    for (const auto& [rule_set, least] : {std::pair{"us", 30}, std::pair{"uk", 10}}) {
        for (const int boiled : {5, 9, 10, 11, 29, 30, 31, 60}) {
            CAPTURE(boiled);
            CHECK(gives("beans-dry", [&](Dish& dish) {
                      dish.rule_set = rule_set;
                      in_slow_cooker(dish);
                      const auto text =
                          "300 g dried kidney beans, boiled " + std::to_string(boiled) + " min";
                      dish.package.ingredients.push_back(
                          {parse_quantity(text).value(), IngredientDay::PackingDay, {}});
                  }) == (boiled < least));
        }
    }
}

TEST_CASE("what is in the slow cooker for less than 3 h is only reheated") {
    for (const int time : {60, 179, 180, 181, 480}) {
        CAPTURE(time);
        CHECK(gives("slow-cooker-reheating", [&](Dish& dish) {
                  in_slow_cooker(dish);
                  dish.package.cook->time = TimeRange{minutes{30}, minutes{time}};
              }) == (time < 180));
    }
    CHECK(gives("slow-cooker-reheating", [](Dish& dish) {
        in_slow_cooker(dish);
        dish.package.food = {"cooked meat"};
        dish.package.cook->time = TimeRange{hours{7}, hours{9}};
    }));
}

TEST_CASE("whole cuts rest below 71 °C, for 3 minutes, and not above") {
    // FoodSafety.gov, Cook to a Safe Minimum Internal Temperature: 145 °F with a rest of 3 minutes;
    // at the 160 °F (71 °C) of ground meat none.
    for (const double degrees : {63.0, 70.9, 71.0, 74.0}) {
        CAPTURE(degrees);
        CHECK(gives("rest", [&](Dish& dish) {
                  dish.package.food = {"raw chops"};
                  dish.package.cook->until = celsius(degrees);
              }) == (degrees < 71.0));
    }
}

TEST_CASE("thawing in water warmer than 70 °F is refused") {
    // FDA Food Code 3-501.13 (B): 21 °C (70 °F) or below; as it is printed, 21 °C is 70 °F.
    for (const auto& [degrees, warm] :
         {std::pair{"15 °C", false}, std::pair{"21 °C", false}, std::pair{"70 °F", false},
          std::pair{"22 °C", true}, std::pair{"71 °F", true}, std::pair{"40 °C", true}}) {
        CAPTURE(degrees);
        CHECK(gives("thaw-warm", [&](Dish& dish) {
                  dish.package.thaw.method = ThawMethod::ColdWater;
                  dish.package.thaw.note = std::string{"in water of "} + degrees;
              }) == warm);
    }
}

TEST_CASE("food that stands out for 2 h or more is refused, for less it is not") {
    // USDA FSIS, Leftovers and Food Safety: the two-hour rule.
    for (const auto& [span, is_long] :
         {std::pair{"30 min", false}, std::pair{"90 min", false}, std::pair{"119 min", false},
          std::pair{"120 min", true}, std::pair{"2 h", true}, std::pair{"3 hours", true}}) {
        const std::string words = std::string{"Let it stand on the counter for "} + span + ".";
        CAPTURE(words);
        CHECK(gives("thaw-warm", [&](Dish& dish) { dish.package.note = words; }) == is_long);
    }
}

TEST_CASE("a number between a room and a refrigerator parts them, whichever number it is") {
    const auto is_warm = [](const std::string& note) {
        return gives("thaw-warm", [&](Dish& dish) { dish.package.thaw.note = note; });
    };
    CHECK_FALSE(is_warm("garage fridge"));
    CHECK_FALSE(is_warm("fridge, garage"));
    for (int number = 1; number <= 24; ++number) {
        const auto note = "garage " + std::to_string(number) + ", fridge";
        CAPTURE(note);
        CHECK(is_warm(note));
    }
}

TEST_CASE("a container with less of a face than its bag has is refused, whatever its sides") {
    // 1 kg that is 25 mm thick covers 400 cm² of water's density, somewhat less of a dish's.
    struct Case {
        int width;
        int length;
        bool too_small;
    };
    for (const auto& c :
         {Case{300, 300, false}, Case{200, 200, false}, Case{100, 400, false},
          Case{400, 100, false}, Case{120, 120, true}, Case{100, 200, true}, Case{400, 50, true}}) {
        CAPTURE(c.width);
        CAPTURE(c.length);
        CHECK(gives("container-too-small", [&](Dish& dish) {
                  dish.package.weight = Mass{1000.0};
                  dish.package.thickness = Length::millimetres(25);
                  dish.package.container = {
                      Length::millimetres(c.width), Length::millimetres(c.length), {}, "a box"};
              }) == c.too_small);
    }
}
