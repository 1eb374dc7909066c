// What is made ready on the day before: by the shipped tables, from the text of a day.

#include "kitchen/foods/parts_ahead.h"
#include "service/days.h"

#include <doctest/doctest.h>

using namespace thawslip;

namespace {

std::string day_with(const std::string& prepared, const std::string& package) {
    return "[day]\nmade = 2026-11-07\n" + prepared +
           "[[package]]\ndish = \"Beet and lovage pottage\"\nservings = 4\n"
           "food = \"soup or stew\"\nweight = \"1.5 kg\"\nthickness = \"30 mm\"\n" +
           package;
}

std::string ingredient(const std::string& words, const std::string& day = "day before") {
    return "[[package.ingredient]]\nadd = \"" + words + "\"\nfor = \"" + day + "\"\n";
}

service::Days planned(const std::string& text) {
    return service::plan_days({{"day.toml", text}}, service::Settings{});
}

int days_counted(const std::string& prepared, const std::string& package) {
    const auto days = planned(day_with(prepared, package));
    REQUIRE(days.plans.size() == 1);
    REQUIRE(days.plans[0].packages.size() == 1);
    return days.plans[0].packages[0].package.days_refrigerated;
}

bool tells(const service::Days& days, const std::string& words) {
    for (const auto& fault : days.diagnostics) {
        if (fault.message.find(words) != std::string::npos) {
            return true;
        }
    }
    return false;
}

} // namespace

TEST_CASE("what is cooked, spoils or is not known counts as chilled until it is packed") {
    struct Case {
        const char* words;
        int days;
    };
    // By what each word names in src/kitchen/food_words; strict where nothing is known.
    const Case cases[] = {
        {"2 l beef stock", 1},         {"600 g cooked lentils", 1},
        {"500 g cooked rice", 1},      {"1 kg diced beef", 1},
        {"400 g smoked trout", 1},     {"1 kg gekochte Kartoffeln", 1},
        {"1 l caldo de verduras", 1},  {"300 ml grandmother's base", 1},
        {"2 kg beetroot, diced", 0},   {"6 onions, chopped", 0},
        {"1 kg Zwiebeln, gehackt", 0}, {"1 kg zanahorias, en dados", 0},
        {"1 kg cebollas picadas", 0},  {"2 Zwiebeln, gekocht", 1},
        {"1 kg carne picada", 1},      {"400 g red lentils, rinsed", 0},
        {"3 apples, cored", 0},
    };
    for (const auto& c : cases) {
        CAPTURE(std::string{c.words});
        CHECK(days_counted("", ingredient(c.words)) == c.days);
        CHECK(days_counted("", ingredient(c.words, "cook day")) == 0);
    }
}

TEST_CASE("the days count from the day that is named, and never fewer than the cook wrote") {
    const auto stock = ingredient("2 l beef stock");
    CHECK(days_counted("prepared = \"day before\"\n", stock) == 1);
    CHECK(days_counted("prepared = 2026-11-05\n", stock) == 2);
    CHECK(days_counted("prepared = 2026-11-06\n", "days_refrigerated = 3\n" + stock) == 3);
}

TEST_CASE("a dish that is made on the day before counts whole, keeps from then, and is not asked") {
    const auto days = planned(day_with("prepared = 2026-11-06\n", "made = 2026-11-06\n"));
    const auto& planned_dish = days.plans.at(0).packages.at(0);
    CHECK(planned_dish.package.days_refrigerated == 1);
    CHECK(kitchen::to_iso(planned_dish.keep_until.date) == "2027-01-06");
    for (const auto& caution : planned_dish.cautions) {
        CHECK(caution.id != "chilled-since-made");
    }
    // Without `prepared` it is asked.
    const auto asked = planned(day_with("", "made = 2026-11-06\n"));
    bool found = false;
    for (const auto& caution : asked.plans.at(0).packages.at(0).cautions) {
        found = found || caution.id == "chilled-since-made";
    }
    CHECK(found);
}

TEST_CASE("all that goes into the bags of such a dish is bought for the day before") {
    using kitchen::IngredientDay;
    const auto days = planned(day_with(
        "prepared = 2026-11-06\n", "made = 2026-11-06\n" + ingredient("2 kg beetroot", "cook day") +
                                       "[[package.ingredient]]\nadd = \"6 onions\"\n"));
    const auto& package = days.plans.at(0).packages.at(0).package;
    const auto prepared = days.plans[0].prepared;
    CHECK(day_of(package.ingredients[0], package, prepared) == IngredientDay::CookDay);
    CHECK(day_of(package.ingredients[1], package, prepared) == IngredientDay::DayBefore);
    CHECK(day_of(package.ingredients[1], package, std::nullopt) == IngredientDay::PackingDay);
}

TEST_CASE("raw food that stands longer than its list allows is refused") {
    // Raw minced meat keeps 1 to 2 days (FoodSafety.gov, Cold Food Storage Chart).
    const auto mince = ingredient("1 kg raw beef mince");
    CHECK_FALSE(has_errors(planned(day_with("prepared = 2026-11-05\n", mince)).diagnostics));
    const auto late = planned(day_with("prepared = 2026-11-03\n", mince));
    CHECK(has_errors(late.diagnostics));
    CHECK(tells(late, "\"raw beef mince\" is ready 4 days before it is packed"));
}

TEST_CASE("a bag thawed in the refrigerator keeps shorter by the days before") {
    const auto usual = planned(day_with("", ingredient("2 l beef stock", "cook day")));
    const auto ahead = planned(day_with("", ingredient("2 l beef stock")));
    const auto& before = usual.plans.at(0).packages.at(0).after_thawing;
    const auto& after = ahead.plans.at(0).packages.at(0).after_thawing;
    REQUIRE(before);
    REQUIRE(after);
    CHECK(after->low == before->low - std::chrono::days{1});
}
