#include "service/food_facts.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip;
using service::food_facts;

TEST_CASE("the facts of a kind of food come with their list, in the language of its words") {
    const auto facts = food_facts("Hackfleisch", "us", "de");
    REQUIRE_FALSE(facts.empty());
    CHECK(facts[0].food == "raw ground meat");
    REQUIRE(facts[0].frozen.has_value());
    CHECK(facts[0].frozen->rule_set == "us");
    CHECK(facts[0].minimum.has_value());
    CHECK(facts[0].thawed.has_value());
    CHECK(
        std::ranges::any_of(facts[0].words, [](const auto& word) { return word == "Hackbraten"; }));
}

TEST_CASE("no words are all kinds, and words that come near none are none") {
    CHECK(food_facts("", "us", "en").size() > food_facts("stew", "us", "en").size());
    CHECK(food_facts("qqqqqqqq", "us", "en").empty());
}

TEST_CASE("what does not freeze well says why") {
    kitchen::UnsuitableRow row;
    CHECK(service::why_text(row) == "does not freeze well");
    row.why = "it turns watery";
    CHECK(service::why_text(row) == "it turns watery");
    const auto all = food_facts("", "us", "en");
    CHECK(std::ranges::any_of(all, [](const auto& facts) {
        return facts.unsuitable.has_value() && !facts.frozen.has_value();
    }));
}
