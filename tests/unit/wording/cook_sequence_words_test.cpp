#include "kitchen/measures/quantity.h"
#include "kitchen/plan.h"
#include "wording/cook_sequence_words.h"
#include "wording/prints.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace cook_sequence_words_test {

using namespace thawslip;
using namespace thawslip::wording;

namespace {

using Anchor = kitchen::When::Anchor;

kitchen::Finish addition(const std::string& add, Anchor anchor, int minutes = 0,
                         const std::string& bag = "") {
    return {kitchen::parse_quantity(add).value(), {anchor, std::chrono::minutes{minutes}}, bag, {}};
}

kitchen::Plan plan_with(std::vector<kitchen::Finish> finish,
                        std::vector<std::string> contains = {}) {
    kitchen::Day day;
    day.made = std::chrono::year{2026} / 10 / 17;
    kitchen::Package package;
    package.dish = "Parsnip and pear pot";
    package.servings = 4;
    package.bags = 2;
    package.use_by = std::chrono::year{2027} / 1 / 17;
    package.contains = std::move(contains);
    package.finish = std::move(finish);
    package.cook.emplace();
    package.cook->in = "wide pan";
    package.cook->until = kitchen::Temperature{74.0};
    package.cook->steps = {"Warm it slowly.", "Stir in the cream."};
    day.packages.push_back(package);
    Diagnostics faults;
    return kitchen::plan(day, {}, faults);
}

Style english() {
    return style_for(shipped_language("en"), {});
}

std::string words_of(const Paragraph& paragraph) {
    std::string words;
    for (const auto& span : paragraph.spans) {
        words += span.text;
    }
    return words;
}

const std::vector<Paragraph>& lines(const Print& print, const char* field) {
    REQUIRE(print.field(field) != nullptr);
    return print.field(field)->paragraphs;
}

} // namespace

TEST_CASE(
    "a cook-day card says the cooking, each moment once, its additions and steps, and done last") {
    const auto plan = plan_with({addition("100 ml cream", Anchor::BeforeEnd, 5, "blue jar")});
    const auto card = cook_day_card(plan, plan.packages.front(), english());
    const auto& said = lines(card, "sequence");
    REQUIRE(said.size() == 5);
    CHECK(said[0].label == "Start");
    CHECK(words_of(said[0]) == "Wide pan");
    CHECK(said[1].marker == Marker::Number);
    CHECK(said[1].with_previous); // how it is cooked stands on no card alone
    CHECK(lines(card, "steps").front().number == 1);
    CHECK(said[2].label == "Last 5 min");
    CHECK(said[2].marker == Marker::TickBox);
    CHECK(words_of(said[2]).find("cream") != std::string::npos);
    REQUIRE(said[2].below.size() == 1);
    CHECK(words_of(said[2].below[0]) == "blue jar"); // a line of its own
    CHECK(said[3].with_previous);                    // the step that puts it in
    CHECK(said[4].label == "Done");
    CHECK(words_of(said[4]).substr(0, 6) == "74 °C");
    CHECK(lines(card, "until").front().label == "Done at");
}

TEST_CASE("what is added at serving comes when it is done, unless its steps cook on") {
    auto plan = plan_with({addition("1 lemon", Anchor::AtServing)});
    auto& steps = plan.packages.front().package.cook->steps;
    steps.push_back("Squeeze the lemon over it.");
    const auto card = cook_day_card(plan, plan.packages.front(), english());
    const auto& all = lines(card, "sequence");
    CHECK(all.back().label.empty()); // the step
    CHECK(all[all.size() - 2].label == "To serve");
    CHECK(all[all.size() - 3].label == "Done");
    CHECK(all[all.size() - 3].with_previous); // on no card alone
    CHECK(words_of(all[all.size() - 3]).find("before it is served") == std::string::npos);

    steps.back() = "Squeeze the lemon in and simmer for 2 min.";
    const auto other = cook_day_card(plan, plan.packages.front(), english());
    const auto& last = lines(other, "sequence").back();
    CHECK(last.label == "Done");
    CHECK(words_of(last).find("before it is served") != std::string::npos);
}

TEST_CASE("a finishing card says each moment once, and counts what is to be added") {
    const auto plan = plan_with({addition("100 ml cream", Anchor::BeforeEnd, 5),
                                 addition("2 pears", Anchor::BeforeEnd, 5),
                                 addition("1 lemon", Anchor::AtServing)});
    const auto& planned = plan.packages.front();
    const auto card = finishing_card(plan, planned, planned.bags.front(), english());
    const auto& rows = lines(card, "finish-grouped");
    REQUIRE(rows.size() == 3);
    CHECK(rows[0].label == "Last 5 min");
    CHECK(rows[1].label.empty());
    CHECK(rows[1].with_previous);
    CHECK(rows[2].label == "To serve");
    CHECK(words_of(lines(card, "finish-count").front()) == "3 things");
}

TEST_CASE("a cook-day card names the allergens of what is added too") {
    const auto said = [](std::vector<std::string> contains) {
        const auto plan =
            plan_with({addition("100 ml cream", Anchor::BeforeEnd, 5)}, std::move(contains));
        const auto card = cook_day_card(plan, plan.packages.front(), english());
        return lines(card, "contains").back();
    };
    CHECK(words_of(said({"celery"})) == "celery. Added on cook day milk");
    CHECK(said({}).label == "Added on cook day");
    CHECK(words_of(said({})) == "milk");
    CHECK(words_of(said({"celery", "milk"})) == "celery, milk"); // who avoids it is warned
}

TEST_CASE("a finishing card names the allergens that the additions' words name, and no others") {
    const auto said = [](std::vector<kitchen::Finish> finish, std::vector<std::string> contains) {
        const auto plan = plan_with(std::move(finish), std::move(contains));
        const auto& planned = plan.packages.front();
        const auto card = finishing_card(plan, planned, planned.bags.front(), english());
        const auto& paragraphs = lines(card, "contains-of-finish");
        return paragraphs.empty() ? ""
                                  : paragraphs.front().label + " " + words_of(paragraphs.front());
    };
    CHECK(said({addition("30 g walnuts", Anchor::AtServing)}, {}) ==
          "These contain: tree nuts (walnut)");
    // No US law lists mustard, but this cook declares it.
    CHECK(said({addition("1 tbsp mustard", Anchor::AtServing)}, {"mustard"}) ==
          "These contain: mustard");
    CHECK(said({addition("1 tbsp mustard", Anchor::AtServing)}, {}).empty());
    CHECK(said({addition("2 pears", Anchor::AtServing)}, {"milk"}).empty()); // which is in the bag
}

TEST_CASE("where no temperature is set there is none to say") {
    auto plan = plan_with({});
    auto& planned = plan.packages.front();
    REQUIRE(until_field(planned, english()).paragraphs.size() == 1);
    CHECK(words_of(until_field(planned, english()).paragraphs.front()).starts_with("74"));
    planned.package.cook->until.reset();
    CHECK(until_field(planned, english()).paragraphs.empty());
    planned.package.cook.reset();
    CHECK(until_field(planned, english()).paragraphs.empty());
}

} // namespace cook_sequence_words_test
