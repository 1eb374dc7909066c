#include "base/fill.h"
#include "kitchen/cautions/cautions.h"
#include "kitchen/plan.h"
#include "kitchen/texts/text.h"
#include "wording/fields.h"
#include "wording/language.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <functional>
#include <set>

namespace cautions_test {

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;

namespace {

StorageTable table(std::string rule_set = "us") {
    StorageTable t;
    t.rule_set = std::move(rule_set);
    const auto add = [&](const char* food, FoodKind kind, int low, int high, int fridge) {
        t.rows.push_back({food, "us", months{low}, months{high}, food, "a list", "read"});
        t.classes.push_back({food, kind});
        if (fridge > 0) {
            t.before_freezing.push_back(
                {food, "us", days{fridge}, days{fridge + 1}, food, "a list", "read"});
        }
        t.after_thawing.push_back({kind, "us", days{3}, days{4}, true, food, "a list", "read"});
    };
    add("soup or stew", FoodKind::CookedDish, 2, 3, 3);
    add("cooked meat", FoodKind::Leftover, 2, 6, 3);
    add("cooked rice", FoodKind::Leftover, 2, 2, 3);
    add("raw chops", FoodKind::RawCut, 4, 12, 3);
    add("raw ground meat", FoodKind::RawGround, 3, 4, 1);
    add("lean fish", FoodKind::RawFish, 6, 8, 1);
    add("hot dogs", FoodKind::ReadyToEat, 1, 2, 7);
    add("bread", FoodKind::Other, 2, 3, 0);
    add("bacon", FoodKind::RawCut, 1, 1, 7);
    add("cooked ham", FoodKind::ReadyToEat, 1, 2, 3);
    add("raw whole poultry", FoodKind::RawPoultry, 12, 12, 1);
    add("scallops", FoodKind::RawShellfish, 3, 6, 1);
    add("blanched vegetables", FoodKind::Vegetable, 8, 12, 0);
    add("yeast dough or pie shells", FoodKind::Other, 1, 2, 0);
    return t;
}

Quantity quantity(const char* text) {
    Quantity q;
    q.as_written = text;
    q.item = text;
    return q;
}

Temperature celsius(double degrees) {
    return {degrees, TemperatureScale::Celsius};
}

/// The ordinary dish: thawed in the refrigerator, then long in the slow cooker, up to 74 °C.
Package stew() {
    Package package;
    package.dish = "Squash and red lentil stew";
    package.servings = 6;
    package.food = {"soup or stew"};
    package.contains = {"celery"};
    package.where = KeyPath{"package[1]"};
    package.thaw.where = package.where.key("thaw");
    package.finish = {
        {quantity("1 l vegetable stock"), {}, "", package.where.key("finish").index(0)},
        {quantity("200 g baby spinach"), {}, "", package.where.key("finish").index(1)}};
    Cook cook;
    cook.in = "slow cooker";
    cook.vessel = Vessel::SlowCooker;
    cook.setting = "low";
    cook.time = TimeRange{hours{7}, hours{9}};
    cook.until = celsius(74);
    cook.steps = {"Tip the thawed bag into the cooker.", "Stir in the stock."};
    cook.where = package.where.key("cook");
    package.cook = cook;
    return package;
}

constexpr FoodWord a_few_words[] = {
    {"chick", FoodRole::Base, "poultry", "chicken", "en"},
    {"egg", FoodRole::Base, "egg", "egg", "en"},
    {"pastrami", FoodRole::Kind, "cooked ham", "pastrami", "en"},
    {"raw", FoodRole::State, "raw", "raw", "en"},
    {"vegetabl", FoodRole::Base, "vegetable", "vegetable", "en"},
};

constexpr FoodWord carpaccio[] = {
    {"carpaccio", FoodRole::Kind, "meat to be eaten raw", "carpaccio", "en"},
};

constexpr FoodWord ground_words[] = {
    {"crudo", FoodRole::State, "raw", "crudo", "es"},
    {"gehackt", FoodRole::Form, "ground", "gehackt", "de"},
    {"ground", FoodRole::Form, "ground", "ground", "en"},
    {"picado", FoodRole::Form, "ground", "picado", "es"},
    {"raw", FoodRole::State, "raw", "raw", "en"},
    {"rohe", FoodRole::State, "raw", "rohe", "de"},
};

void add_ingredient(Package& package, const char* text) {
    const auto where = package.where.key("ingredient").index(package.ingredients.size());
    package.ingredients.push_back({quantity(text), IngredientDay::PackingDay, where});
}

std::vector<Caution> given(const Package& package, const KitchenSettings& settings = {},
                           const StorageTable& t = table()) {
    const Date made = 2026y / 10 / 17;
    const auto row = shortest_lived(t, package.food);
    const auto keep = package.use_by || !row
                          ? KeepUntil{package.use_by.value_or(made), DateBasis::SetByCook, {}}
                          : KeepUntil{add_months(made, row->low), DateBasis::StorageTable, row};
    return cautions(
        {package, package.made.value_or(made), keep, t, settings, made, add_days(made, -days{3})});
}

std::set<std::string> ids(const std::vector<Caution>& list) {
    std::set<std::string> result;
    for (const auto& caution : list) {
        result.insert(caution.id);
    }
    return result;
}

using Ids = std::set<std::string>;

/// Said of every dish that lies in the refrigerator or goes into a slow cooker: left out of the
/// cases, so that they show what is particular to them.
const Ids usual{"thaw-on-a-plate", "thaw-still-hard", "slow-cooker-fill"};

Ids particular(const std::vector<Caution>& list) {
    auto found = ids(list);
    std::erase_if(found, [](const std::string& id) { return usual.contains(id); });
    return found;
}

struct Case {
    const char* name;
    Ids expected;
    std::function<void(Package&, KitchenSettings&, StorageTable&)> change;
};

const std::vector<Case>& cases() {
    static const std::vector<Case> all = {
        {"the ordinary stew", {"slow-cooker-thaw-first"}, [](auto&, auto&, auto&) {}},
        {"frozen into the slow cooker",
         {"slow-cooker-frozen"},
         [](auto& p, auto&, auto&) { p.thaw.method = ThawMethod::FromFrozen; }},
        {"from frozen in the oven",
         {},
         [](auto& p, auto&, auto&) {
             p.thaw.method = ThawMethod::FromFrozen;
             p.cook->vessel = Vessel::Oven;
             p.cook->setting.clear();
         }},
        {"a step that tips in a frozen block",
         {"slow-cooker-thaw-first", "slow-cooker-step-frozen"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Tip in the frozen block."}; }},
        {"a step that warns of it",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Never cook it from frozen."}; }},
        {"frozen peas at the end",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Stir in the frozen peas."}; }},
        {"only the warm setting",
         {"slow-cooker-thaw-first", "slow-cooker-warm"},
         [](auto& p, auto&, auto&) { p.cook->setting = "Keep warm"; }},
        {"low, then warm",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->setting = "low, then warm"; }},
        {"leftovers in the slow cooker",
         {"slow-cooker-thaw-first", "slow-cooker-reheating"},
         [](auto& p, auto&, auto&) { p.food = {"cooked meat"}; }},
        {"a stew in it for too short to be raw",
         {"slow-cooker-thaw-first", "slow-cooker-reheating"},
         [](auto& p, auto&, auto&) {
             p.cook->time = TimeRange{hours{1}, hours{2}};
         }},
        {"cooked meat beside raw meat is no reheating",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.food = {"cooked meat", "raw ground meat"};
         }},
        {"dry kidney beans in the slow cooker",
         {"slow-cooker-thaw-first", "beans-dry"},
         [](auto& p, auto&, auto&) { add_ingredient(p, "300 g dried red kidney beans"); }},
        {"the same, boiled",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             add_ingredient(p, "300 g dried kidney beans, boiled 30 min");
         }},
        {"the same, boiled in a step",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             add_ingredient(p, "300 g dried kidney beans");
             p.cook->steps = {"Boil the beans for 30 min first."};
         }},
        {"canned kidney beans",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { add_ingredient(p, "2 cans kidney beans"); }},
        {"kidney beans, dry or not",
         {"slow-cooker-thaw-first", "beans-unclear"},
         [](auto& p, auto&, auto&) { add_ingredient(p, "kidney beans"); }},
        {"dry kidney beans in a pot",
         {},
         [](auto& p, auto&, auto&) {
             add_ingredient(p, "300 g dried kidney beans");
             p.cook->vessel = Vessel::Pot;
         }},
        {"dry lentils",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { add_ingredient(p, "500 g dry red lentils"); }},
        {"a target below the minimum",
         {"slow-cooker-thaw-first", "target-below-minimum"},
         [](auto& p, auto&, auto&) { p.cook->until = celsius(70); }},
        {"the same with a reason",
         {"slow-cooker-thaw-first", "target-below-minimum-with-reason"},
         [](auto& p, auto&, auto&) {
             p.cook->until = celsius(70);
             p.cook->because = "held there for two minutes";
         }},
        {"70 °C under the UK list",
         {"slow-cooker-thaw-first", "hold", "refreeze-never"},
         [](auto& p, auto&, auto& t) {
             p.cook->until = celsius(70);
             t.rule_set = "uk";
         }},
        {"no target for a cooked dish",
         {"slow-cooker-thaw-first", "target-missing"},
         [](auto& p, auto&, auto&) { p.cook->until.reset(); }},
        {"no target, with a reason",
         {"slow-cooker-thaw-first", "no-target-with-reason"},
         [](auto& p, auto&, auto&) {
             p.cook->until.reset();
             p.cook->because = "served cold";
         }},
        {"no cooking at all", {"target-missing"}, [](auto& p, auto&, auto&) { p.cook.reset(); }},
        {"no cooking instructions for raw meat",
         {"target-missing"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw ground meat"};
             p.cook.reset();
         }},
        {"raw meat cooked without a target",
         {"raw-without-target"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw ground meat"};
             p.cook->vessel = Vessel::Pan;
             p.cook->until.reset();
         }},
        {"chops at 63 °C",
         {"rest"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pan;
             p.cook->until = celsius(63);
         }},
        {"chops at 74 °C",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pan;
         }},
        {"bread",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"bread"};
             p.dish = "Rolls";
             p.contains = {"wheat"};
             p.cook.reset();
         }},
        {"in the microwave",
         {"microwave-stand"},
         [](auto& p, auto&, auto&) { p.cook->vessel = Vessel::Microwave; }},
        {"thawed in cold water",
         {"slow-cooker-from-water", "thaw-cook-at-once", "cold-water-thaw",
          "ceiling-unsaid", "refreeze-after-cooking"},
         [](auto& p, auto&, auto&) { p.thaw.method = ThawMethod::ColdWater; }},
        {"a block in cold water",
         {"slow-cooker-from-water", "thaw-cook-at-once", "cold-water-thaw",
          "refreeze-after-cooking", "cold-water-too-long"},
         [](auto& p, auto&, auto&) {
             p.thaw.method = ThawMethod::ColdWater;
             p.thickness = Length::millimetres(110);
         }},
        {"sausages that nobody heats, in cold water",
         {"thaw-cook-at-once", "cold-water-thaw", "refreeze-after-cooking",
          "cold-water-eaten-as-it-is"},
         [](auto& p, auto&, auto&) {
             p.thaw.method = ThawMethod::ColdWater;
             p.food = {"hot dogs"};
             p.finish.clear();
             p.cook.reset();
         }},
        {"ten kilograms in the microwave",
         {"slow-cooker-from-microwave", "thaw-cook-at-once", "refreeze-after-cooking",
          "microwave-too-long"},
         [](auto& p, auto&, auto&) {
             p.thaw.method = ThawMethod::Microwave;
             p.weight = Mass{10'000};
             p.servings = 30;
         }},
        {"thawed in the microwave",
         {"slow-cooker-from-microwave", "thaw-cook-at-once", "ceiling-unsaid", "refreeze-after-cooking"},
         [](auto& p, auto&, auto&) { p.thaw.method = ThawMethod::Microwave; }},
        {"bread thawed in the microwave",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"bread"};
             p.cook.reset();
             p.thaw.method = ThawMethod::Microwave;
         }},
        {"thawed on the counter",
         {"slow-cooker-thaw-first", "thaw-warm"},
         [](auto& p, auto&, auto&) { p.thaw.note = "overnight on the counter"; }},
        {"thawed in the oven",
         {"slow-cooker-thaw-first", "thaw-warm"},
         [](auto& p, auto&, auto&) { p.thaw.note = "in the oven"; }},
        {"thawed in an oven, before that somewhere else",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.thaw.note = "in a bowl, then into the oven"; }},
        {"not on the counter",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.thaw.note = "Not on the counter!"; }},
        {"vacuum-packed fish",
         {"vacuum-packed-fish"},
         [](auto& p, auto&, auto&) {
             p.food = {"lean fish"};
             p.dish = "Trout";
             p.contains = {"trout"};
             p.note = "vacuum-packed";
             p.cook->vessel = Vessel::Pan;
         }},
        {"vacuum-packed fish in cold water, where the pack stays closed until it has thawed",
         {"thaw-cook-at-once", "vacuum-packed-fish-in-water", "ceiling-unsaid", "cold-water-thaw",
          "refreeze-after-cooking"},
         [](auto& p, auto&, auto&) {
             // FDA Food Code 3-501.13(E)(2) (read as Wisconsin adopted it, ATCP 75, 2016)
             p.food = {"lean fish"};
             p.dish = "Trout";
             p.contains = {"trout"};
             p.note = "vacuum-packed";
             p.thaw.method = ThawMethod::ColdWater;
             p.cook->vessel = Vessel::Pan;
         }},
        {"fish in cold water that may be vacuum-packed",
         {"thaw-cook-at-once", "vacuum-packed-fish-perhaps-in-water", "ceiling-unsaid", "cold-water-thaw",
          "refreeze-after-cooking"},
         [](auto& p, auto&, auto&) {
             p.food = {"lean fish"};
             p.thaw.method = ThawMethod::ColdWater;
             p.cook->vessel = Vessel::Pan;
         }},
        {"fish that may be vacuum-packed",
         {"vacuum-packed-fish-perhaps"},
         [](auto& p, auto&, auto&) {
             p.food = {"lean fish"};
             p.cook->vessel = Vessel::Pan;
         }},
        {"three days chilled before freezing",
         {"slow-cooker-thaw-first", "thaw-no-days-left"},
         [](auto& p, auto&, auto&) { p.days_refrigerated = 3; }},
        {"five days chilled before freezing",
         {"slow-cooker-thaw-first", "thaw-no-days-left", "chilled-too-long"},
         [](auto& p, auto&, auto&) { p.days_refrigerated = 5; }},
        {"eight days chilled before freezing",
         {"slow-cooker-thaw-first", "thaw-no-days-left", "chilled-far-too-long"},
         [](auto& p, auto&, auto&) { p.days_refrigerated = 8; }},
        {"a weight and a thickness that cannot be of one bag",
         {"slow-cooker-thaw-first", "bag-too-wide"},
         [](auto& p, auto&, auto&) {
             p.weight = Mass{1200};
             p.thickness = Length::millimetres(3);
         }},
        {"a pile of a bag",
         {"slow-cooker-thaw-first", "bag-too-narrow"},
         [](auto& p, auto&, auto&) {
             p.weight = Mass{300};
             p.thickness = Length::millimetres(90);
         }},
        {"centimetres for millimetres",
         {"slow-cooker-thaw-first", "bag-on-edge"},
         [](auto& p, auto&, auto&) {
             p.weight = Mass{1500};
             p.thickness = Length::millimetres(300);
         }},
        {"one cooking time for bags of two weights",
         {"slow-cooker-thaw-first", "time-for-sizes"},
         [](auto& p, auto&, auto&) {
             p.weight = Mass{2400};
             p.size = DishSize{0, 6, 8, p.where.key("size").index(0), Mass{700}, {}};
         }},
        {"one cooking time for bags of two thicknesses",
         {"slow-cooker-thaw-first", "time-for-sizes"},
         [](auto& p, auto&, auto&) {
             p.weight = Mass{1200};
             p.thickness = Length::millimetres(31);
             p.size = DishSize{
                 0, 6, 8, p.where.key("size").index(0), Mass{1200}, Length::millimetres(20)};
         }},
        {"one cooking time for bags of two sizes that are much alike",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.weight = Mass{2100};
             p.thickness = Length::millimetres(30);
             p.size = DishSize{
                 0, 6, 8, p.where.key("size").index(0), Mass{700}, Length::millimetres(20)};
         }},
        {"more than its bag holds at that thickness",
         {"slow-cooker-thaw-first", "container-too-small"},
         [](auto& p, auto&, auto&) {
             p.weight = Mass{2200};
             p.thickness = Length::millimetres(30);
             p.container = {Length::millimetres(200), Length::millimetres(200), {}, "20 × 20 cm"};
         }},
        {"a spoonful for each",
         {"slow-cooker-thaw-first", "serving-weight"},
         [](auto& p, auto&, auto&) { p.weight = Mass{120}; }},
        {"a canteen's worth of one dish",
         {"slow-cooker-thaw-first", "many-portions"},
         [](auto& p, auto&, auto&) { p.bags = 100; }},
        {"a day that is still to come",
         {"slow-cooker-thaw-first", "made-in-future"},
         [](auto&, auto& s, auto&) { s.today = 2026y / 9 / 30; }},
        {"a day years ahead",
         {"slow-cooker-thaw-first", "made-in-future", "made-years-away"},
         [](auto&, auto& s, auto&) { s.today = 2023y / 9 / 30; }},
        {"a day of long ago, dated by hand",
         {"slow-cooker-thaw-first", "made-long-ago", "use-by-beyond-list"},
         [](auto& p, auto& s, auto&) {
             p.use_by = 2028y / 1 / 1;
             s.today = 2027y / 12 / 1;
         }},
        {"food that is past its best before it is labelled",
         {"slow-cooker-thaw-first", "already-past-best"},
         [](auto&, auto& s, auto&) { s.today = 2027y / 1 / 1; }},
        {"a use-by date of yesterday",
         {"slow-cooker-thaw-first", "already-past-use-by"},
         [](auto& p, auto& s, auto&) {
             p.use_by = 2026y / 12 / 1;
             s.today = 2026y / 12 / 2;
         }},
        {"a dish made after the packing day",
         {"slow-cooker-thaw-first", "made-after-packing"},
         [](auto& p, auto&, auto&) { p.made = 2026y / 10 / 18; }},
        {"a dish made two days before, and no word of the days between",
         {"slow-cooker-thaw-first", "chilled-since-made"},
         [](auto& p, auto&, auto&) { p.made = 2026y / 10 / 15; }},
        {"a date years ahead",
         {"slow-cooker-thaw-first", "use-by-beyond-list", "use-by-years-away"},
         [](auto& p, auto&, auto&) { p.use_by = 2032y / 1 / 1; }},
        {"a date beyond all lists, and no class",
         {"slow-cooker-thaw-first", "use-by-beyond-all-lists"},
         [](auto& p, auto&, auto&) {
             p.food.clear();
             p.use_by = 2028y / 1 / 1;
         }},
        {"a date beyond the list",
         {"slow-cooker-thaw-first", "use-by-beyond-list"},
         [](auto& p, auto&, auto&) { p.use_by = 2027y / 1 / 18; }},
        {"a date at the list's end",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.use_by = 2027y / 1 / 17; }},
        {"cooked rice",
         {"rice-cool-fast"},
         [](auto& p, auto&, auto&) {
             p.food = {"cooked rice"};
             p.cook->vessel = Vessel::Pan;
         }},
        {"a kettle of food that freezes badly",
         {"slow-cooker-thaw-first", "freezes-limp", "freezes-soft", "freezes-mushy",
          "freezes-rubbery", "freezes-separates", "freezes-soggy", "freezes-weeps",
          "freezes-fades"},
         [](auto& p, auto&, auto&) {
             p.contains = {"celery", "milk", "eggs", "wheat"};
             for (const auto* text : {"1 cucumber", "3 potatoes", "200 g cooked pasta",
                                      "4 hard-boiled eggs", "200 ml sour cream", "crumb topping",
                                      "2 leaves of gelatine", "1 bunch fresh parsley"}) {
                 add_ingredient(p, text);
             }
         }},
        {"what freezes well although it sounds alike",
         {"slow-cooker-thaw-first", "rice-cool-fast"},
         [](auto& p, auto&, auto&) {
             for (const auto* text : {"2 sweet potatoes", "3 sticks celery", "1 cabbage",
                                      "1 tbsp potato starch", "500 g rice", "1 tsp dried basil"}) {
                 add_ingredient(p, text);
             }
         }},
        {"high up, in a pot",
         {"high-altitude"},
         [](auto& p, auto& s, auto&) {
             p.cook->vessel = Vessel::Pot;
             s.altitude_metres = 1524;
         }},
        {"high up, in the slow cooker",
         {"slow-cooker-thaw-first", "high-altitude-slow-cooker"},
         [](auto&, auto& s, auto&) { s.altitude_metres = 914; }},
        {"high up, in the oven",
         {},
         [](auto& p, auto& s, auto&) {
             p.cook->vessel = Vessel::Oven;
             p.cook->setting.clear();
             s.altitude_metres = 1524;
         }},
        {"not high enough to tell",
         {"slow-cooker-thaw-first"},
         [](auto&, auto& s, auto&) { s.altitude_metres = 700; }},
        {"a target that boiling water does not reach at that height",
         {"target-above-boiling", "high-altitude"},
         [](auto& p, auto& s, auto&) {
             p.cook->vessel = Vessel::Pot;
             p.cook->in = "pot";
             p.cook->until = celsius(94);
             s.altitude_metres = 3000;
         }},
        {"such a target in an oven",
         {},
         [](auto& p, auto& s, auto&) {
             p.cook->vessel = Vessel::Oven;
             p.cook->in = "oven";
             p.cook->setting = "180 °C";
             p.cook->until = celsius(94);
             s.altitude_metres = 3000;
         }},
        {"people at risk, and all is hot",
         {"slow-cooker-thaw-first"},
         [](auto&, auto& s, auto&) { s.people_at_risk = true; }},
        {"people at risk and hot dogs",
         {"slow-cooker-thaw-first", "risk-ready-to-eat", "no-medical-advice-of-card"},
         [](auto& p, auto& s, auto&) {
             p.food = {"hot dogs"};
             s.people_at_risk = true;
         }},
        {"people at risk and a low target",
         {"slow-cooker-thaw-first", "risk-low-target", "target-below-minimum-with-reason",
          "no-medical-advice"},
         [](auto& p, auto& s, auto&) {
             p.cook->until = celsius(60);
             p.cook->because = "pink inside";
             s.people_at_risk = true;
         }},
        {"people at risk and honey",
         {"slow-cooker-thaw-first", "risk-honey", "no-medical-advice"},
         [](auto& p, auto& s, auto&) {
             add_ingredient(p, "1 tbsp honey");
             s.people_at_risk = true;
         }},
        {"75 °C under the UK list",
         {"slow-cooker-thaw-first", "hold-briefly", "refreeze-never"},
         [](auto& p, auto&, auto& t) {
             p.cook->until = celsius(75);
             t.rule_set = "uk";
         }},
        {"65 °C under the UK list",
         {"slow-cooker-thaw-first", "hold-too-short", "refreeze-never"},
         [](auto& p, auto&, auto& t) {
             p.cook->until = celsius(65);
             t.rule_set = "uk";
         }},
        {"65 °C for ten minutes under the UK list",
         {"slow-cooker-thaw-first", "hold", "refreeze-never"},
         [](auto& p, auto&, auto& t) {
             p.cook->until = celsius(65);
             p.cook->hold = minutes{10};
             t.rule_set = "uk";
         }},
        {"a cooked ham at 60 °C",
         {"ham-below-minimum"},
         [](auto& p, auto&, auto&) {
             p.food = {"cooked ham"};
             p.cook->vessel = Vessel::Oven;
             p.cook->setting.clear();
             p.cook->until = celsius(60);
         }},
        {"a cooked ham at 60 °C for people at risk",
         {"target-below-minimum", "risk-ready-to-eat", "no-medical-advice-of-card"},
         [](auto& p, auto& s, auto&) {
             p.food = {"cooked ham"};
             p.cook->vessel = Vessel::Oven;
             p.cook->setting.clear();
             p.cook->until = celsius(60);
             s.people_at_risk = true;
         }},
        {"hot dogs to be eaten cold",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"hot dogs"};
             p.cook.reset();
         }},
        {"scallops without a target",
         {"shellfish"},
         [](auto& p, auto&, auto&) {
             p.food = {"scallops"};
             p.dish = "Scallops";
             p.contains = {"scallops"};
             p.cook->vessel = Vessel::Pan;
             p.cook->until.reset();
         }},
        {"bacon without a target",
         {"target-missing", "bacon-raw", "rest"},
         [](auto& p, auto&, auto&) {
             p.food = {"bacon"};
             p.cook->vessel = Vessel::Pan;
             p.cook->until.reset();
         }},
        {"blanched vegetables without cooking",
         {"vegetables-cook"},
         [](auto& p, auto&, auto&) {
             p.food = {"blanched vegetables"};
             p.cook.reset();
         }},
        {"a low oven, from the refrigerator",
         {"low-heat-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Oven;
             p.cook->setting = "110 °C";
         }},
        {"a low oven, from cold water",
         {"low-heat-from-water", "thaw-cook-at-once", "cold-water-thaw", "ceiling-unsaid", "refreeze-after-cooking"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Oven;
             p.cook->setting = "225 °F";
             p.thaw.method = ThawMethod::ColdWater;
         }},
        {"a water bath, from the microwave",
         {"low-heat-from-microwave", "thaw-cook-at-once", "ceiling-unsaid", "refreeze-after-cooking"},
         [](auto& p, auto&, auto&) {
             p.cook->in = "water bath";
             p.cook->vessel = Vessel::Other;
             p.thaw.method = ThawMethod::Microwave;
         }},
        {"a low oven, from frozen",
         {"low-heat-frozen"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Oven;
             p.cook->setting = "gas mark 1";
             p.thaw.method = ThawMethod::FromFrozen;
         }},
        {"a time for frozen food of a bag that is thawed",
         {"slow-cooker-thaw-first", "time-for-frozen"},
         [](auto& p, auto&, auto&) { p.cook->time_from = TimeFrom::Frozen; }},
        {"a time for thawed food of a soup from frozen",
         {"time-for-thawed"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Pot;
             p.cook->time_from = TimeFrom::Thawed;
             p.thaw.method = ThawMethod::FromFrozen;
         }},
        {"from frozen in the pressure cooker",
         {"frozen-pressure-cooker", "time-from-unsaid"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::PressureCooker;
             p.thaw.method = ThawMethod::FromFrozen;
         }},
        {"from frozen on the grill",
         {"frozen-grill"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Grill;
             p.thaw.method = ThawMethod::FromFrozen;
         }},
        {"a stuffed bird in the slow cooker",
         {"slow-cooker-thaw-first", "slow-cooker-stuffed", "stuffed-poultry"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw whole poultry"};
             p.dish = "Gefüllte Gans";
         }},
        {"a bird without stuffing",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw whole poultry"};
             p.dish = "Goose without stuffing";
         }},
        {"a stuffed roast",
         {"stuffed-meat"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.dish = "Lomo relleno de orejones";
             p.cook->vessel = Vessel::Oven;
             p.cook->setting.clear();
         }},
        {"stuffed fish at the minimum of plain fish",
         {"target-below-minimum", "vacuum-packed-fish-perhaps"},
         [](auto& p, auto&, auto&) {
             p.food = {"lean fish"};
             p.dish = "Gefüllter Saibling";
             p.contains = {"trout"};
             p.cook->vessel = Vessel::Oven;
             p.cook->setting.clear();
             p.cook->until = celsius(63);
         }},
        {"a haybox",
         {"low-heat-thaw-first", "haybox-boil-first"},
         [](auto& p, auto&, auto&) { p.cook->in = "haybox"; }},
        {"ham that nobody heats, in the microwave",
         {"microwave-eaten-as-it-is", "thaw-cook-at-once", "refreeze-after-cooking"},
         [](auto& p, auto&, auto&) {
             p.thaw.method = ThawMethod::Microwave;
             p.food = {"cooked ham"};
             p.finish.clear();
             p.cook.reset();
         }},
        {"garlic in oil, whose days once thawed the thaw line says",
         {"slow-cooker-thaw-first", "garlic-in-oil"},
         [](auto& p, auto&, auto&) { p.dish = "Stew with garlic oil"; }},
        {"garlic in oil, of which the thaw line says no days",
         {"garlic-in-oil-days"},
         [](auto& p, auto&, auto& t) {
             t.after_thawing.clear();
             p.food = {"bread"};
             p.dish = "Ajos confitados";
             p.cook.reset();
         }},
        {"fish for a ceviche",
         {"fish-eaten-raw", "target-missing", "vacuum-packed-fish-perhaps"},
         [](auto& p, auto&, auto&) {
             p.food = {"lean fish"};
             p.dish = "Trout for ceviche";
             p.contains = {"trout"};
             p.cook.reset();
         }},
        {"berries that make ill raw, and that nothing cooks",
         {"plant-cook"},
         [](auto& p, auto&, auto&) {
             p.food = {"fruit"};
             p.dish = "Holunderbeeren";
             p.finish.clear();
             p.cook.reset();
         }},
        {"the same, cooked before",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"fruit"};
             p.dish = "Elderberries, precooked";
             p.finish.clear();
             p.cook.reset();
         }},
        {"mushrooms that make ill raw, at serving",
         {"slow-cooker-thaw-first", "plant-addition"},
         [](auto& p, auto&, auto&) {
             p.finish[0].add = quantity("50 g morels");
             p.finish[0].when.anchor = When::Anchor::AtServing;
         }},
        {"mushrooms that are cooked along",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.finish[0].add = quantity("50 g morels"); }},
        {"a nut that is no food",
         {"slow-cooker-thaw-first", "plant-poison"},
         [](auto& p, auto&, auto&) { add_ingredient(p, "200 g horse chestnuts"); }},
        {"milk for a baby among what goes in",
         {"slow-cooker-thaw-first", "infant-milk"},
         [](auto& p, auto&, auto&) { add_ingredient(p, "60 g infant formula"); }},
        {"an appliance that begins by itself",
         {"slow-cooker-thaw-first", "delayed-start"},
         [](auto& p, auto&, auto&) {
             p.cook->steps = {"Load it at seven and set the delayed start for noon."};
         }},
        {"raw meat in an oven that is hardly hot",
         {"low-heat-thaw-first", "oven-cool"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Oven;
             p.cook->in = "oven";
             p.cook->setting = "110 °C";
         }},
        {"the same, and hot in the end",
         {"low-heat-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Oven;
             p.cook->in = "oven";
             p.cook->setting = "110 °C";
             p.cook->steps = {"Then 220 °C until they are brown."};
         }},
        {"green beans that nobody cooks",
         {"plant-cook"},
         [](auto& p, auto&, auto&) {
             p.food = {"vegetables"};
             p.dish = "Runner beans";
             p.finish.clear();
             p.cook.reset();
         }},
        {"marinade out of the bag",
         {"marinade-raw"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Serve the leftover marinade beside them."};
         }},
        {"marinade that is boiled",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Boil the leftover marinade for 3 min."};
         }},
        {"minced meat, pink",
         {"served-underdone"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw ground meat"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Serve them pink in the middle."};
         }},
        {"out in the morning, in the oven at night",
         {"stands-out"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Sacar por la mañana y asar por la noche."};
         }},
        {"out in the morning, and simmered until the evening",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Take it out in the morning and simmer it until the evening."};
         }},
        {"out in the morning, in German, but into the refrigerator",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Morgens herausnehmen, in den Kühlschrank legen und abends braten."};
         }},
        {"out in the morning, in English",
         {"stands-out"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Take it out in the morning and fry it in the evening."};
         }},
        {"a bird that is washed",
         {"poultry-washed"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw whole poultry"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Rinse and pat dry."};
         }},
        {"minced meat, pink no more",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"raw ground meat"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Fry until no longer pink in the middle."};
         }},
        {"water that nobody changes",
         {"thaw-cook-at-once", "cold-water-thaw", "refreeze-after-cooking", "ceiling-unsaid",
          "cold-water-said"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Pot;
             p.thaw.method = ThawMethod::ColdWater;
             p.thaw.note = "no need to change the water";
         }},
        {"from the microwave back into the refrigerator",
         {"thaw-cook-at-once", "refreeze-after-cooking", "ceiling-unsaid", "fast-thaw-kept"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Pot;
             p.thaw.method = ThawMethod::Microwave;
             p.thaw.note = "then back in the fridge for the late crew";
         }},
        {"biscuits that are dough",
         {"dough-raw", "allergen-undeclared"},
         [](auto& p, auto&, auto&) {
             p.food = {"bread"};
             p.dish = "Cookie dough scoops";
             p.finish.clear();
             p.cook.reset();
         }},
        {"a freezer that was off",
         {"slow-cooker-thaw-first", "food-suspect"},
         [](auto& p, auto&, auto&) { p.note = "The stock is a bit off since the power cut."; }},
        {"a bag in the oven",
         {"slow-cooker-thaw-first", "bag-in-heat"},
         [](auto& p, auto&, auto&) {
             p.cook->steps = {"Lay the freezer bag in the microwave for 5 min."};
         }},
        {"out of its bag, into the oven",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.cook->steps = {"Tip the bag into a dish for the microwave."};
         }},
        {"glass",
         {"slow-cooker-thaw-first", "glass-breaks"},
         [](auto& p, auto&, auto&) { p.note = "In two preserving jars, filled to the rim."; }},
        {"on a shelf",
         {"slow-cooker-thaw-first", "kept-on-shelf"},
         [](auto& p, auto&, auto&) { p.note = "Once thawed, store in the pantry."; }},
        {"in jars",
         {"slow-cooker-thaw-first", "kept-on-shelf"},
         [](auto& p, auto&, auto&) { p.note = "What is left goes into sterilised jars."; }},
        {"on a buffet",
         {"slow-cooker-thaw-first", "stands-out"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Put it on the buffet until the dance."}; }},
        {"on a buffet, and kept hot",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Keep it hot on the buffet."}; }},
        {"warmed up for days",
         {"slow-cooker-thaw-first", "reheated-again"},
         [](auto& p, auto&, auto&) { p.note = "What is left can be reheated every day."; }},
        {"frozen meat in hot fat",
         {"frozen-hot-oil"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw ground meat"};
             p.thaw.method = ThawMethod::FromFrozen;
             p.cook->in = "deep fryer";
             p.cook->vessel = Vessel::Pan;
         }},
        {"a salad that is served cold",
         {"rice-cool-fast"},
         [](auto& p, auto&, auto&) {
             p.food = {"cooked rice"};
             p.finish.clear();
             p.cook->vessel = Vessel::Other;
             p.cook->until.reset();
             p.cook->steps = {"Stir it through and serve it cold."};
         }},
        {"dry beans in a pot that never boils",
         {"beans-dry"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Pot;
             p.cook->steps = {"Keep it at 80 °C until soft."};
             add_ingredient(p, "300 g dried red kidney beans");
         }},
        {"honey for a child of some months",
         {"slow-cooker-thaw-first", "infant-cools", "risk-honey", "no-medical-advice"},
         [](auto& p, auto&, auto&) {
             p.dish = "Pear mush (8 months)";
             add_ingredient(p, "1 tbsp honey");
         }},
        {"bread on the table",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"bread"};
             p.finish.clear();
             p.cook.reset();
             p.thaw.note = "at room temperature";
         }},
        {"meat cooked in part",
         {"part-cooked"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.dish = "Halbgare Koteletts";
             p.cook->vessel = Vessel::Pan;
         }},
        {"meat that is browned",
         {"part-cooked-perhaps"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pot;
             add_ingredient(p, "2 kg lamb chops, seared");
         }},
        {"brown sugar on chops",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pot;
             add_ingredient(p, "100 g brown sugar for the chops");
         }},
        {"a step that begins and stops",
         {"cook-without-pause"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw ground meat"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Brown the mince and chill it until the next day."};
         }},
        {"a step that browns and goes on",
         {},
         [](auto& p, auto&, auto&) {
             p.food = {"raw ground meat"};
             p.cook->vessel = Vessel::Pan;
             p.cook->steps = {"Brown the mince, add the stock and simmer."};
         }},
        {"people at risk and smoked fish at serving",
         {"slow-cooker-thaw-first", "risk-smoked-fish", "no-medical-advice",
          "allergen-undeclared"},
         [](auto& p, auto& s, auto&) {
             p.finish[0].add = quantity("100 g smoked trout");
             p.finish[0].when.anchor = When::Anchor::AtServing;
             s.people_at_risk = true;
         }},
        {"smoked fish that is cooked through",
         {"slow-cooker-thaw-first", "allergen-undeclared"},
         [](auto& p, auto& s, auto&) {
             p.finish[0].add = quantity("100 g smoked trout");
             s.people_at_risk = true;
         }},
        {"people at risk, nothing of it hot",
         {"risk-raw-egg", "risk-soft-cheese", "risk-raw-milk", "risk-pate", "risk-berries",
          "no-medical-advice", "freezes-separates"},
         [](auto& p, auto& s, auto&) {
             p.contains = {"eggs", "milk"};
             p.food = {"bread"};
             p.cook.reset();
             for (const auto* text : {"mayonesa", "200 g Weichkäse", "1 l leche cruda",
                                      "100 g Leberwurst", "300 g raspberries"}) {
                 add_ingredient(p, text);
             }
             s.people_at_risk = true;
         }},
        {"liver, cooked through, for people at risk",
         {"slow-cooker-thaw-first", "risk-liver", "no-medical-advice"},
         [](auto& p, auto& s, auto&) {
             p.dish = "Leek pot with chicken livers";
             s.people_at_risk = true;
         }},
        {"liver sausage in a hot pot, for people at risk, in German",
         {"slow-cooker-thaw-first", "risk-liver", "no-medical-advice"},
         [](auto& p, auto& s, auto&) {
             add_ingredient(p, "200 g Leberwurst");
             s.people_at_risk = true;
         }},
        {"liver, and nobody is at risk",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.dish = "Hígado encebollado"; }},
        {"fish high in mercury, cooked through, for people at risk",
         {"slow-cooker-thaw-first", "risk-mercury", "no-medical-advice"},
         [](auto& p, auto& s, auto&) {
             p.dish = "Estofado de tiburón";
             p.contains = {"celery", "shark"};
             s.people_at_risk = true;
         }},
        {"no fish that hunts, for people at risk",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto& s, auto&) {
             p.dish = "Seehecht in Lauchsuppe";
             p.contains = {"celery", "hake"};
             s.people_at_risk = true;
         }},
        {"honey in a baby's food",
         {"slow-cooker-thaw-first", "infant-cools", "risk-honey", "no-medical-advice"},
         [](auto& p, auto&, auto&) {
             p.dish = "Papilla de calabaza";
             add_ingredient(p, "1 cucharada de miel");
         }},
        {"honey on baby carrots",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.dish = "Baby carrots";
             add_ingredient(p, "1 tbsp honey");
         }},
        {"no food is given, and the words name one",
         {"slow-cooker-thaw-first", "food-from-words"},
         [](auto& p, auto&, auto&) { p.food_basis = FoodBasis::Words; }},
        {"no food is given, and a soup counts as raw once it has stood too long",
         {"slow-cooker-thaw-first", "food-from-words", "thaw-no-days-left",
          "chilled-far-too-long-raw"},
         [](auto& p, auto&, auto&) {
             p.dish = "Soup or stew";
             p.food_basis = FoodBasis::Words;
             p.days_refrigerated = 8;
         }},
        {"no food is given, and no word names any",
         {"slow-cooker-thaw-first", "food-unknown"},
         [](auto& p, auto&, auto&) { p.food_basis = FoodBasis::Nothing; }},
        {"raw chicken in what is said to be soup",
         {"slow-cooker-thaw-first", "food-says-less"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             add_ingredient(p, "800 g raw chicken thighs");
         }},
        {"spices, nuts and herbs that are ground or chopped",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto& t) {
             t.words = ground_words;
             p.contains = {"almonds"};
             add_ingredient(p, "2 tsp raw ground cumin");
             add_ingredient(p, "200 g ground almonds");
             add_ingredient(p, "1 manojo perejil picado");
         }},
        {"something ground of which nobody says what it is",
         {"slow-cooker-thaw-first", "food-says-less"},
         [](auto& p, auto&, auto& t) {
             t.words = ground_words;
             add_ingredient(p, "500 g raw ground");
         }},
        {"chicken in what is said to be of vegetables",
         {"slow-cooker-thaw-first", "food-says-less"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             p.food_as_written = {"vegetable stew"};
             add_ingredient(p, "800 g chicken thighs");
         }},
        {"eggs in what is said to be of vegetables",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             p.food_as_written = {"vegetable stew"};
             p.contains.emplace_back("eggs");
             add_ingredient(p, "4 eggs");
         }},
        {"chicken in a soup that was cooked",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             add_ingredient(p, "800 g chicken thighs");
         }},
        {"chicken that is cooked beside the bag",
         {"slow-cooker-thaw-first", "side-minimum"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             t.classes.push_back({"raw poultry pieces", FoodKind::RawPoultry});
             p.sides = {{quantity("400 g raw chicken thighs"), {}, "pan", {}, {}, {}}};
         }},
        {"chicken that is cooked beside the bag, by the UK's list",
         {"side-minimum-held", "slow-cooker-thaw-first", "hold", "refreeze-never"},
         [](auto& p, auto&, auto& t) {
             t.rule_set = "uk";
             t.words = a_few_words;
             t.classes.push_back({"raw poultry pieces", FoodKind::RawPoultry});
             p.sides = {{quantity("400 g raw chicken thighs"), {}, "pan", {}, {}, {}}};
         }},
        {"food for a baby",
         {"slow-cooker-thaw-first", "slow-cooker-reheating", "infant-food", "infant-cools",
          "no-medical-advice"},
         [](auto& p, auto&, auto& t) {
             t.classes.push_back({"infant food", FoodKind::InfantFood});
             p.food = {"infant food"};
         }},
        {"food for a baby, from cold water",
         {"slow-cooker-reheating", "thaw-cook-at-once", "cold-water-thaw",
          "refreeze-after-cooking", "ceiling-unsaid", "infant-food-at-once",
          "infant-cools", "no-medical-advice"},
         [](auto& p, auto&, auto& t) {
             t.classes.push_back({"infant food", FoodKind::InfantFood});
             p.food = {"infant food"};
             p.thaw.method = ThawMethod::ColdWater;
         }},
        {"infant food with honey, which a cake brings in German",
         {"slow-cooker-thaw-first", "slow-cooker-reheating", "infant-food", "infant-cools", "risk-honey",
          "no-medical-advice"},
         [](auto& p, auto&, auto& t) {
             t.classes.push_back({"infant food", FoodKind::InfantFood});
             p.food = {"infant food"};
             p.dish = "Birnenmus mit Waldhonig";
         }},
        {"a melon that is called after honey",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto& s, auto&) {
             add_ingredient(p, "1 honeydew melon");
             s.people_at_risk = true;
         }},
        {"the counter for hours, by number",
         {"slow-cooker-thaw-first", "thaw-warm"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Set it out on the worktop for 7 hours."}; }},
        {"the counter for hours, in words",
         {"slow-cooker-thaw-first", "thaw-warm"},
         [](auto& p, auto&, auto&) {
             p.cook->steps = {"Leave it out on the worktop for three hours."};
         }},
        {"the counter, and hours of cooking in words",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.cook->steps = {"Set the dish out on the worktop, then simmer the stew for three hours."};
         }},
        {"marble in the evening, in Spanish",
         {"slow-cooker-thaw-first", "thaw-warm"},
         [](auto& p, auto&, auto&) { p.note = "Dejar la noche antes sobre el mármol."; }},
        {"dough that rises in the warm",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.contains = {"celery", "wheat"};
             p.cook->steps = {"Let the dough rise on the counter for 4 hours."};
         }},
        {"chicken cooked in part, in a step",
         {"cook-without-pause", "slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Partly grill the chicken thighs."}; }},
        {"chicken cooked in part, in a Spanish step",
         {"cook-without-pause", "slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Cocinar el pollo a medias."}; }},
        {"mince seared now and finished another day, in Spanish",
         {"cook-without-pause", "slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Dorar la carne y terminar otro día."}; }},
        {"beef half roasted, in German",
         {"cook-without-pause", "slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Das Rindfleisch halb durchbraten."}; }},
        {"half a roast duck, and meat browned on the day",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.cook->steps = {"Half roast duck goes in last.", "Brown the lamb on the day."};
         }},
        {"an allergen that is not declared",
         {"slow-cooker-thaw-first", "allergen-undeclared"},
         [](auto& p, auto&, auto&) { add_ingredient(p, "50 g butter"); }},
        {"an allergen that is denied",
         {"slow-cooker-thaw-first", "allergen-denied"},
         [](auto& p, auto&, auto&) {
             p.contains = {"celery", "sin gluten"};
         }},
        {"an allergen that may be there, among those that are",
         {"slow-cooker-thaw-first", "allergen-trace"},
         [](auto& p, auto&, auto&) {
             p.contains = {"celery", "traces of sesame"};
         }},
        {"an allergen that may be there, and an ingredient that brings it for sure",
         {"slow-cooker-thaw-first", "allergen-only-as-trace"},
         [](auto& p, auto&, auto&) {
             p.may_contain = {"milk"};
             add_ingredient(p, "50 g butter");
         }},
        {"an allergen that may be there, and a note that says no more",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.may_contain = {"sesame"};
             p.note = "May contain traces of sesame from the spice mill.";
         }},
        {"an allergen in both lists",
         {"slow-cooker-thaw-first", "allergen-in-both"},
         [](auto& p, auto&, auto&) {
             p.contains = {"celery", "milk"};
             p.may_contain = {"Milch"};
         }},
        {"one kind of nut in it, another that may be",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.contains = {"celery", "pecans"};
             p.may_contain = {"cashews"};
         }},
        {"an allergen that a step stirs in",
         {"slow-cooker-thaw-first", "allergen-undeclared"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Stir in a spoon of crème fraîche."}; }},
        {"an allergen that a note lays beside it",
         {"slow-cooker-thaw-first", "allergen-undeclared"},
         [](auto& p, auto&, auto&) { p.note = "Mit gerösteten Pistazien anrichten."; }},
        {"a step without nuts, in a pan",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Without nuts: heat the pan."}; }},
        {"black beans from a bag, in Spanish",
         {"slow-cooker-thaw-first", "beans-dry"},
         [](auto& p, auto&, auto&) { add_ingredient(p, "300 g de frijoles negros secos"); }},
        {"dried beans, and a can of something else",
         {"slow-cooker-thaw-first", "beans-dry"},
         [](auto& p, auto&, auto&) { add_ingredient(p, "dried pinto beans and canned tomatoes"); }},
        {"beans that are not boiled",
         {"slow-cooker-thaw-first", "beans-dry"},
         [](auto& p, auto&, auto&) {
             add_ingredient(p, "getrocknete weiße Bohnen");
             p.cook->steps = {"Die Bohnen nicht kochen."};
         }},
        {"the counter in a step, in German",
         {"slow-cooker-thaw-first", "thaw-warm"},
         [](auto& p, auto&, auto&) {
             p.cook->steps = {"Über Nacht auf der Arbeitsplatte auftauen."};
         }},
        {"supper at the table",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Serve it at the table."}; }},
        {"a drawer that only keeps food warm",
         {"slow-cooker-warm", "slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->vessel = Vessel::Warmer; }},
        {"a misspelt allergen",
         {"slow-cooker-thaw-first", "allergen-misspelt"},
         [](auto& p, auto&, auto&) { p.contains = {"selery"}; }},
        {"barley, which only the EU lists",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { add_ingredient(p, "200 g pearl barley"); }},
        {"barley under the EU list",
         {"slow-cooker-thaw-first", "allergen-undeclared"},
         [](auto& p, auto& s, auto&) {
             add_ingredient(p, "200 g pearl barley");
             s.allergens = find_allergen_list("eu");
         }},
        {"an allergen of no list",
         {"slow-cooker-thaw-first", "allergen-unknown"},
         [](auto& p, auto&, auto&) { p.contains.emplace_back("kiwi"); }},
        {"a part that waits for the packing day",
         {"slow-cooker-thaw-first", "ahead-counts"},
         [](auto& p, auto&, auto&) {
             add_ingredient(p, "2 l of what is left");
             p.ingredients.back().day = IngredientDay::DayBefore;
         }},
        {"a part that waits for it too long",
         {"slow-cooker-thaw-first", "ahead-counts", "ahead-too-long", "food-says-less"},
         [](auto& p, auto&, auto& t) {
             add_ingredient(p, "1 kg raw chicken");
             p.ingredients.back().day = IngredientDay::DayBefore;
             t.words = a_few_words;
             for (const char* food : {"raw whole poultry", "raw poultry pieces"}) {
                 t.before_freezing.push_back({food, "us", days{1}, days{2}, food, "a list", ""});
             }
         }},
        {"frozen chicken added to a slow cooker",
         {"slow-cooker-thaw-first", "addition-frozen"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             p.finish.front().add = quantity("300 g frozen chicken wings");
         }},
        {"frozen chicken beside the dish, in a slow cooker of its own",
         {"slow-cooker-thaw-first", "addition-frozen", "side-minimum",
          "slow-cooker-step-frozen"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             t.classes.push_back({"raw poultry pieces", FoodKind::RawPoultry});
             p.sides = {{quantity("4 chicken legs"), {}, "", {"They go in frozen."}, {}, {}}};
             p.sides.front().vessel = Vessel::SlowCooker;
         }},
        {"frozen peas added to a slow cooker",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             p.finish.front().add = quantity("200 g frozen peas");
         }},
        {"raw chicken that is added late",
         {"slow-cooker-thaw-first", "side-minimum"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             t.classes.push_back({"raw poultry pieces", FoodKind::RawPoultry});
             p.finish.front().add = quantity("300 g raw chicken");
             p.finish.front().when = {When::Anchor::BeforeEnd, minutes{10}};
         }},
        {"chicken in oil that is added late",
         {"slow-cooker-thaw-first", "side-minimum"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             t.classes.push_back({"raw poultry pieces", FoodKind::RawPoultry});
             p.finish.front().add = quantity("80 g chicken in oil");
             p.finish.front().when = {When::Anchor::BeforeEnd, minutes{10}};
         }},
        {"carpaccio on the plate of people at risk",
         {"slow-cooker-thaw-first", "risk-eaten-raw", "no-medical-advice"},
         [](auto& p, auto& settings, auto& t) {
             settings.people_at_risk = true;
             t.words = carpaccio;
             t.classes.push_back({"meat to be eaten raw", FoodKind::RawCut});
             p.finish.front().add = quantity("80 g carpaccio");
             p.finish.front().when = {When::Anchor::AtServing, {}};
         }},
        {"raw chicken that is cooked as long as the dish",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             t.classes.push_back({"raw poultry pieces", FoodKind::RawPoultry});
             p.finish.front().add = quantity("300 g raw chicken");
         }},
        {"dried beans that are added late, to a pot",
         {"beans-late"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Pot;
             p.cook->in = "pot";
             p.finish.front().add = quantity("200 g dried borlotti beans");
             p.finish.front().when = {When::Anchor::BeforeEnd, minutes{29}};
         }},
        {"beans in the bag that are uncooked, and heated for minutes",
         {"beans-uncooked"},
         [](auto& p, auto&, auto&) {
             p.dish = "Kidney beans, soaked, uncooked";
             p.cook->vessel = Vessel::Pot;
             p.cook->in = "pot";
             p.cook->time = TimeRange{minutes{10}, minutes{10}};
         }},
        {"beans in the bag that are uncooked, and boil for long enough",
         {},
         [](auto& p, auto&, auto&) {
             p.dish = "Kidney beans, soaked, uncooked";
             p.cook->vessel = Vessel::Pot;
             p.cook->in = "pot";
             p.cook->time = TimeRange{minutes{30}, minutes{40}};
         }},
        {"dried beans that went in on packing day, of which nothing says that they boiled",
         {"beans-perhaps-unboiled"},
         [](auto& p, auto&, auto&) {
             add_ingredient(p, "500 g borlotti beans, soaked overnight");
             p.cook->vessel = Vessel::Pot;
             p.cook->in = "pot";
             p.cook->time = TimeRange{minutes{10}, minutes{10}};
         }},
        {"such beans that boiled",
         {},
         [](auto& p, auto&, auto&) {
             add_ingredient(p, "500 g borlotti beans, soaked, boiled 40 min");
             p.cook->vessel = Vessel::Pot;
             p.cook->in = "pot";
             p.cook->time = TimeRange{minutes{10}, minutes{10}};
         }},
        {"dried beans that still boil for half an hour",
         {},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Pot;
             p.cook->in = "pot";
             p.finish.front().add = quantity("200 g dried borlotti beans");
             p.finish.front().when = {When::Anchor::BeforeEnd, minutes{30}};
         }},
        {"dried beans beside the dish, in a slow cooker",
         {"slow-cooker-thaw-first", "beans-dry"},
         [](auto& p, auto&, auto&) {
             const TimeRange long_enough{minutes{30}, minutes{30}};
             p.sides = {{quantity("200 g dried navy beans"), long_enough, "slow cooker", {}, {}, {}}};
             p.sides.front().vessel = Vessel::SlowCooker;
         }},
        {"dried beans beside a slow cooker, in a pot",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             const auto where = p.where.key("side").index(0);
             const TimeRange long_enough{minutes{30}, minutes{90}};
             p.sides = {{quantity("200 g dried navy beans"), long_enough, "pot", {}, {}, where}};
             p.sides.front().vessel = Vessel::Pot;
         }},
        {"dried beans beside the dish that boil for too short",
         {"slow-cooker-thaw-first", "beans-late"},
         [](auto& p, auto&, auto&) {
             const auto where = p.where.key("side").index(0);
             const TimeRange perhaps{minutes{29}, minutes{90}};
             p.sides = {{quantity("200 g dried navy beans"), perhaps, "pot", {}, {}, where}};
             p.sides.front().vessel = Vessel::Pot;
         }},
        {"what goes into a pressure cooker halfway",
         {"under-pressure"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::PressureCooker;
             p.finish.front().when = {When::Anchor::Halfway, {}};
         }},
        {"what goes into a pressure cooker before its lid is on, and onto the plate",
         {},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::PressureCooker;
             p.finish.push_back(p.finish.front());
             p.finish.back().when = {When::Anchor::AtServing, {}};
         }},
        {"what keeps warm at 50 °C until it is eaten",
         {"slow-cooker-thaw-first", "held-too-cool"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Hold warm at 50 °C for the late shift."}; }},
        {"what keeps warm at 60 °C until it is eaten, in German",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Bei 60 °C warm halten."}; }},
        {"a note that has it keep for longer than it does",
         {"slow-cooker-thaw-first", "days-said"},
         [](auto& p, auto&, auto&) { p.note = "Lasts eight days in the fridge."; }},
        {"a week in the refrigerator, in Spanish",
         {"slow-cooker-thaw-first", "days-said"},
         [](auto& p, auto&, auto&) { p.note = "Se conserva 1 semana en el frigorífico."; }},
        {"days that it keeps, and days in the freezer",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.note = "Keeps 2 days in the fridge; frozen it keeps 80 days.";
         }},
        {"months at the freezer's temperature",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.note = "Store up to 60 days at -18 °C."; }},
        {"dough that is to be baked",
         {"dough-raw"},
         [](auto& p, auto&, auto&) {
             p.food = {"yeast dough or pie shells"};
             p.cook.reset();
         }},
        {"cold cuts at serving, for people at risk",
         {"slow-cooker-thaw-first", "risk-addition", "no-medical-advice-of-card"},
         [](auto& p, auto& s, auto& t) {
             t.words = a_few_words;
             p.finish.front().add = quantity("60 g pastrami");
             p.finish.front().when = {When::Anchor::AtServing, minutes{0}};
             s.people_at_risk = true;
         }},
        {"cold cuts that boil along, for people at risk",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto& s, auto& t) {
             t.words = a_few_words;
             p.finish.front().add = quantity("60 g pastrami");
             s.people_at_risk = true;
         }},
        {"a vessel cooler than the middle is to be",
         {"setting-too-cool"},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Steamer;
             p.cook->in = "steamer";
             p.cook->setting = "72 °C";
         }},
        {"a vessel as hot as the middle is to be",
         {},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Steamer;
             p.cook->in = "steamer";
             p.cook->setting = "74 °C";
         }},
        {"a vessel that a step makes hotter",
         {},
         [](auto& p, auto&, auto&) {
             p.cook->vessel = Vessel::Steamer;
             p.cook->in = "steamer";
             p.cook->setting = "72 °C";
             p.cook->steps = {"Raise it to 95 °C for the last half hour."};
         }},
        {"a step that takes a chop out too early",
         {"step-below-minimum", "rest"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Pan;
             p.cook->in = "pan";
             p.cook->setting = "high";
             p.cook->until = celsius(63);
             p.cook->steps = {"Fry it until the middle shows 57 °C."};
         }},
        {"raw food in a vessel that nobody knows",
         {"vessel-unknown"},
         [](auto& p, auto&, auto&) {
             p.food = {"raw chops"};
             p.cook->vessel = Vessel::Other;
             p.cook->in = "lava stones";
             p.cook->setting.clear();
         }},
        {"a soup that cools in its pot for a night",
         {"slow-cooker-thaw-first", "cool-too-long"},
         [](auto& p, auto&, auto&) { p.note = "Leave it to cool in its pot overnight."; }},
        {"a soup that cools in the refrigerator for a night, in German",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) {
             p.note = "Über Nacht im Kühlschrank ganz auskühlen lassen.";
         }},
        {"a soup that cools, and freezes for a night",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.note = "Let it cool, then freeze it overnight."; }},
        {"a soup that was cooked and cooled on the day before",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.note = "Am Vortag gekocht und abgekühlt."; }},
        {"what is left goes into the freezer again",
         {"slow-cooker-thaw-first", "refreeze-said"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"Freeze the leftovers."}; }},
        {"what is left goes into the freezer no more, in Spanish",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.cook->steps = {"No volver a congelar."}; }},
        {"thawed in a place that nobody knows",
         {"slow-cooker-thaw-first", "thaw-place-unknown"},
         [](auto& p, auto&, auto&) { p.thaw.note = "On the third church pew."; }},
        {"thawed on a plate, in its bag",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.thaw.note = "Lay it on a deep plate, in its bag."; }},
        {"frozen vegetables at serving",
         {"slow-cooker-thaw-first", "addition-blanched"},
         [](auto& p, auto&, auto& t) {
             t.words = a_few_words;
             p.finish.front().add = quantity("200 g frozen vegetables");
             p.finish.front().when = {When::Anchor::AtServing, minutes{0}};
         }},
        {"a name that promises what contains breaks",
         {"slow-cooker-thaw-first", "allergen-promise"},
         [](auto& p, auto&, auto&) {
             p.contains = {"celery", "walnuts"};
             p.dish = "Nut-free lentil stew";
         }},
        {"a note that promises what contains breaks, or says what to leave out",
         {"slow-cooker-thaw-first", "allergen-promise-doubtful"},
         [](auto& p, auto&, auto&) {
             p.contains = {"celery", "walnuts"};
             p.note = "Without nuts for the guests.";
         }},
        {"a dish that is dairy-free by its name, in German, with butter",
         {"slow-cooker-thaw-first", "allergen-promise-doubtful", "allergen-undeclared"},
         [](auto& p, auto&, auto&) {
             p.dish = "Rübensuppe ohne Milch";
             add_ingredient(p, "50 g Butter");
         }},
        {"a note that promises what is so",
         {"slow-cooker-thaw-first"},
         [](auto& p, auto&, auto&) { p.note = "Nut-free, for everybody."; }},
        {"sprouts at serving, for people at risk",
         {"slow-cooker-thaw-first", "risk-sprouts", "no-medical-advice"},
         [](auto& p, auto& s, auto&) {
             p.finish.front().add = quantity("50 g radish sprouts");
             p.finish.front().when = {When::Anchor::AtServing, minutes{0}};
             s.people_at_risk = true;
         }},
        {"nuts of no kind",
         {"slow-cooker-thaw-first", "allergen-kind"},
         [](auto& p, auto&, auto&) { p.contains.emplace_back("tree nuts"); }},
    };
    return all;
}

std::vector<Caution> run(const Case& c) {
    auto package = stew();
    KitchenSettings settings;
    auto t = table();
    c.change(package, settings, t);
    return given(package, settings, t);
}

std::string said(const Caution& caution, std::string_view language = "en") {
    return wording::say_caution(caution, wording::shipped_language(language));
}

/// Whether "{0}" or another number in braces is left.
bool has_slot(const std::string& text) {
    const auto open = text.find('{');
    return open != std::string::npos && open + 2 < text.size() && text[open + 2] == '}';
}

} // namespace

TEST_CASE("each rule applies where it should and is silent elsewhere") {
    for (const auto& c : cases()) {
        CAPTURE(std::string{c.name});
        for (const auto& id : particular(run(c))) {
            CAPTURE(id);
            CHECK(c.expected.contains(id));
        }
        for (const auto& id : c.expected) {
            CAPTURE(id);
            CHECK(particular(run(c)).contains(id));
        }
    }
}

TEST_CASE("a dish from the refrigerator lies on a plate, a slow cooker is filled by half") {
    auto package = stew();
    CHECK(std::ranges::includes(ids(given(package)), usual));
    package.thaw.method = ThawMethod::ColdWater;
    package.cook->vessel = Vessel::Pot;
    CHECK(ids(given(package)) == particular(given(package)));
}

TEST_CASE("every rule that can apply is shown to apply") {
    Ids shown;
    for (const auto& c : cases()) {
        shown.merge(ids(run(c)));
    }
    for (const auto& rule : caution_rules()) {
        CAPTURE(rule.id);
        CHECK((rule.find == nullptr) != shown.contains(std::string{rule.id}));
    }
}

TEST_CASE("rules are complete: an id of their own, a source, and a message where they refuse") {
    Ids seen;
    for (const auto& rule : caution_rules()) {
        const auto& [message, hint] = rule.refusal;
        CAPTURE(rule.id);
        CHECK(seen.insert(std::string{rule.id}).second);
        CHECK_FALSE(rule.source.empty());
        CHECK(message.empty() == (rule.level != CautionLevel::Refuse));
        CHECK((hint.empty() || !message.empty()));
        CHECK_FALSE(message.ends_with('.'));
        CHECK(lower(message.substr(0, 1)) == message.substr(0, 1));
    }
}

TEST_CASE("what a rule finds fills its words completely, in every language") {
    for (const auto& c : cases()) {
        for (const auto& caution : run(c)) {
            CAPTURE(caution.id);
            CHECK_FALSE(caution.where.empty());
            if (caution.level == CautionLevel::Refuse) {
                const auto rules = caution_rules();
                const auto& [message, hint] = find_rule(rules, caution.id)->refusal;
                CHECK_FALSE(has_slot(fill(message, caution.values)));
                CHECK_FALSE(has_slot(fill(hint, caution.values)));
                continue;
            }
            for (const auto& language : wording::shipped_languages()) {
                CHECK_FALSE(has_slot(said(caution, language)));
            }
        }
    }
}

TEST_CASE("temperatures are said with the kitchen's own units first") {
    auto package = stew();
    package.cook->until.reset();
    CHECK(said(given(package)[0]) == "Heat it until the middle reaches 165 °F (74 °C).");
    KitchenSettings metric;
    metric.measures = Measures::Metric;
    CHECK(said(given(package, metric)[0]) == "Heat it until the middle reaches 74 °C (165 °F).");
    metric.units = Units::Metric;
    CHECK(said(given(package, metric)[0]) == "Heat it until the middle reaches 74 °C.");
}

TEST_CASE("the gravest caution comes first") {
    for (const auto& c : cases()) {
        CAPTURE(std::string{c.name});
        CHECK(std::ranges::is_sorted(run(c), std::ranges::greater{}, &Caution::level));
    }
}

TEST_CASE("water boils at 203 °F at 5000 ft") {
    auto package = stew();
    package.cook->vessel = Vessel::Pot;
    KitchenSettings settings;
    settings.altitude_metres = 1524;
    const auto list = given(package, settings);
    const auto high = std::ranges::find(list, "high-altitude", &Caution::id);
    REQUIRE(high != list.end());
    CHECK(high->values == std::vector<std::string>{"5000 ft (1524 m)", "203 °F (95 °C)"});
}

TEST_CASE("a fault points at the key that has to be changed") {
    auto package = stew();
    package.cook->until = celsius(60);
    package.contains = {"celery", "kiwi"};
    add_ingredient(package, "50 g butter");
    const auto list = given(package);
    const auto place = [&](std::string_view id) {
        const auto found = std::ranges::find(list, id, &Caution::id);
        return found == list.end() ? std::string{} : found->where.text();
    };
    CHECK(place("target-below-minimum") == "package[1].cook.until");
    CHECK(place("allergen-unknown") == "package[1].contains[2]");
    CHECK(place("allergen-undeclared") == "package[1].ingredient[1].add");
}

TEST_CASE("what is ground or chopped counts as meat, unless a plant is named by a whole word") {
    const auto counts_as_meat = [](const char* text) {
        auto package = stew();
        auto t = table();
        t.words = ground_words;
        add_ingredient(package, text);
        return ids(given(package, {}, t)).contains("food-says-less");
    };
    for (const char* text :
         {"1 tsp raw ground caraway seeds", "3 raw ground chillies", "2 cebollinos crudos picados",
          "30 g de piñones crudos picados", "3 EL rohe gehackte Frühlingszwiebeln",
          "80 g rohe gehackte Kürbiskerne"}) {
        CAPTURE(std::string{text});
        CHECK_FALSE(counts_as_meat(text));
    }
    for (const char* text : {"500 g raw ground, macerated overnight", "500 g raw ground for chili",
                             "400 g crudo picado, macerado", "200 g ajoarriero crudo picado",
                             "200 g rohe gehackte Pfefferbeißer"}) {
        CAPTURE(std::string{text});
        CHECK(counts_as_meat(text));
    }
}

TEST_CASE("meat that is browned one day and finished another is told to be cooked through") {
    const auto pauses = [](const char* step) {
        auto package = stew();
        package.food = {"raw chops"};
        package.cook->vessel = Vessel::Pan;
        package.cook->steps = {step};
        return ids(given(package)).contains("cook-without-pause");
    };
    for (const char* step :
         {"Sear now, finish on Sunday.", "Sear them today and roast them on Sunday.",
          "Brown them, finish tonight.", "Dorar hoy y terminar mañana.",
          "Sellar hoy, asar el domingo.", "Heute anbraten, am Sonntag fertig braten.",
          "Scharf anbraten und abends zu Ende garen."}) {
        CAPTURE(std::string{step});
        CHECK(pauses(step));
    }
    for (const char* step :
         {"Brown them and finish with sage.", "Sear them well for Sunday's table.",
          "Dorar por la mañana, guisar dos horas.", "Anbraten und fertig schmoren.",
          "Finish the sauce on Sunday."}) {
        CAPTURE(std::string{step});
        CHECK_FALSE(pauses(step));
    }
}

TEST_CASE("washing a raw bird is asked about, in every language, and nothing else that is washed") {
    const auto asks = [](const char* step) {
        auto package = stew();
        package.food = {"raw whole poultry"};
        package.cook->vessel = Vessel::Pan;
        package.cook->steps = {step};
        auto t = table();
        t.words = a_few_words;
        return ids(given(package, {}, t)).contains("poultry-washed");
    };
    for (const char* step :
         {"Rinse the chicken under the tap.", "Wash the turkey well inside.",
          "Wash it, then roast.", "Das Hähnchen gut abwaschen.",
          "Hähnchenschenkel waschen und trocken tupfen.", "Lavar bien el pollo.",
          "Enjuagar y secar el pavo.", "Rinse the duck and wash the vegetables."}) {
        CAPTURE(std::string{step});
        CHECK(asks(step));
    }
    for (const char* step :
         {"Do not wash the chicken.", "Never rinse the bird.", "Das Hähnchen nicht waschen.",
          "No lavar el pollo.", "Wash your hands after touching the chicken.",
          "Touch the chicken and then wash your hands.", "Wash the board after the turkey.",
          "Nach dem Hähnchen das Brett abwaschen.", "Lavar la tabla tras cortar el pollo.",
          "Rinse the vegetables and fry the chicken.", "Wash up while the chicken rests.",
          "Rinse the pan with chicken stock.", "No need to rinse the chicken.",
          "Hände nach der Ente abwaschen.",
          "Rinse well before the chicken goes in, and the pan too."}) {
        CAPTURE(std::string{step});
        CHECK_FALSE(asks(step));
    }
}

TEST_CASE("one undeclared allergen is asked about once, whatever names it") {
    auto package = stew();
    add_ingredient(package, "50 g butter");
    add_ingredient(package, "200 ml cream");
    const auto list = given(package);
    CHECK(std::ranges::count(list, "allergen-undeclared", &Caution::id) == 1);
    CHECK(said(list.back()) == "\"butter\" names an allergen that contains does not list: milk?");
}

TEST_CASE("a refused package is left out of the plan, and its fault says what to write") {
    auto package = stew();
    package.thaw.method = ThawMethod::FromFrozen;
    const Day day{2026y / 10 / 17, "", std::nullopt, {package, stew()}};
    Diagnostics faults;
    const auto result = plan(day, table(), faults);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].key.text() == "package[1].cook.in");
    CHECK(faults[0].message ==
          "a slow cooker must not be filled with frozen food; expected food that is fully thawed");
    CHECK(faults[0].hints.size() == 1);
    REQUIRE(result.packages.size() == 1);
    CHECK(particular(result.packages[0].cautions) == Ids{"slow-cooker-thaw-first"});
}

TEST_CASE("the plan carries allergens, the days left and the day's own cautions") {
    auto package = stew();
    package.days_refrigerated = 1;
    Diagnostics faults;
    const auto result = plan({2026y / 10 / 17, "", std::nullopt, {package}}, table(), faults);
    REQUIRE(result.packages.size() == 1);
    CHECK(result.packages[0].allergens.front().meant.front().allergen == Allergen::Celery);
    CHECK(result.packages[0].after_thawing->low == days{2});
    CHECK(ids(result.cautions) ==
          Ids{"two-hour-rule", "cool-before-freezing", "freeze-in-one-layer"});
    CHECK(said(result.cautions[0]) ==
          "perishable food may stand between 40 °F (4 °C) and 140 °F (60 °C) for two hours in "
          "all, one hour above 90 °F (32 °C)");
    package.thaw.method = ThawMethod::ColdWater;
    const auto fast = plan({2026y / 10 / 17, "", std::nullopt, {package}}, table(), faults);
    CHECK_FALSE(fast.packages[0].after_thawing);
}

TEST_CASE("a day of bread needs no talk of cooling") {
    auto package = stew();
    package.food = {"bread"};
    CHECK(day_cautions({2026y / 10 / 17, "", std::nullopt, {package}}, table(), {}).empty());
}

} // namespace cautions_test
