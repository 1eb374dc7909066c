#include "kitchen/cooking/cook_sequence.h"
#include "kitchen/measures/when.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::kitchen;

namespace {

Finish addition(const std::string& add, When::Anchor anchor, int minutes = 0) {
    return {parse_quantity(add).value(), {anchor, std::chrono::minutes{minutes}}, {}, {}};
}

PlannedPackage dish(std::vector<Finish> finish, std::vector<std::string> steps) {
    PlannedPackage planned;
    planned.finish = std::move(finish);
    planned.package.cook.emplace();
    planned.package.cook->steps = std::move(steps);
    return planned;
}

using Anchor = When::Anchor;

} // namespace

TEST_CASE("a step begins the moment of the addition that it names") {
    const auto moments = cook_sequence(
        dish({addition("400 ml coconut milk", Anchor::AtStart),
              addition("150 g green beans", Anchor::BeforeEnd, 12),
              addition("1 lime", Anchor::AtServing)},
             {"Put the block into a wide pan.", "Pour the milk over it and cover.",
              "Scatter the beans over and cover again.", "Squeeze the lime over each plate."}));
    REQUIRE(moments.size() == 3);
    CHECK(moments[0].acts == std::vector<CookAct>{{{}, 0}, {{0}, 1}});
    CHECK(moments[1].acts == std::vector<CookAct>{{{1}, 2}});
    CHECK(moments[2].acts == std::vector<CookAct>{{{2}, 3}});
}

TEST_CASE("an addition that no step names stands where its moment does, and no step is lost") {
    const auto moments = cook_sequence(dish({addition("2 tbsp miso", Anchor::BeforeEnd, 5)},
                                            {"Warm it slowly.", "Stir now and then."}));
    REQUIRE(moments.size() == 2);
    CHECK(moments[0].acts == std::vector<CookAct>{{{}, 0}, {{}, 1}});
    CHECK(moments[1].acts == std::vector<CookAct>{{{0}, {}}});
}

TEST_CASE("a moment that no step names stands before the next one") {
    const auto moments = cook_sequence(dish(
        {addition("100 g butter", Anchor::Halfway), addition("1 bunch dill", Anchor::AtServing)},
        {"Bring it to a simmer.", "Keep it there.", "Chop the dill and serve."}));
    REQUIRE(moments.size() == 3);
    CHECK(moments[0].acts == std::vector<CookAct>{{{}, 0}, {{}, 1}});
    CHECK(moments[1].acts == std::vector<CookAct>{{{0}, {}}});
    CHECK(moments[2].acts == std::vector<CookAct>{{{1}, 2}});
}

TEST_CASE("steps name additions in other forms, in compounds and in other languages") {
    const auto german = cook_sequence(dish(
        {addition("500 ml Gemüsebrühe", Anchor::AtStart), addition("3 Möhren", Anchor::Halfway)},
        {"Den Block in den Topf geben.", "Die Brühe angießen.",
         "Die gewürfelte Möhre einrühren."}));
    CHECK(german[0].acts == std::vector<CookAct>{{{}, 0}, {{0}, 1}});
    CHECK(german[1].acts == std::vector<CookAct>{{{1}, 2}});
    const auto spanish = cook_sequence(dish({addition("2 limas", Anchor::AtServing)},
                                            {"Calentar a fuego lento.", "Exprimir la lima."}));
    CHECK(spanish[1].acts == std::vector<CookAct>{{{0}, 1}});
}

TEST_CASE("a single step that names a late addition stays at the start") {
    const auto moments = cook_sequence(dish({addition("80 g cream", Anchor::BeforeEnd, 5)},
                                            {"Simmer it, with the cream for the last minutes."}));
    CHECK(moments[0].acts == std::vector<CookAct>{{{}, 0}});
    CHECK(moments[1].acts == std::vector<CookAct>{{{0}, {}}});
}

namespace {

/// The steps of each moment of a dish that takes 80 to 100 min, with peas for the last 20:
/// "start 1 2, last 20 3".
std::string moments_of(std::vector<std::string> steps) {
    auto planned = dish({addition("100 g peas", Anchor::BeforeEnd, 20)}, std::move(steps));
    planned.package.cook->time = TimeRange{std::chrono::minutes{80}, std::chrono::minutes{100}};
    std::string text;
    for (const auto& moment : cook_sequence(planned)) {
        const bool is_last = moment.when.anchor == Anchor::BeforeEnd;
        text += text.empty() ? "start"
                             : (is_last ? ", last " : ", after ") +
                                   std::to_string(moment.when.offset.count());
        for (const auto& act : moment.acts) {
            text += act.step ? " " + std::to_string(*act.step + 1) : "";
        }
    }
    return text;
}

} // namespace

TEST_CASE("a step that is all about a time before the end stands at that time") {
    CHECK(moments_of({"Bake it.", "Stir in the peas.", "Take the lid off for the last 10 min."}) ==
          "start 1, last 20 2, last 10 3");
    CHECK(moments_of({"Bake it.", "Turn it for the last half.", "Turn it for the last 40 minutes.",
                      "Stir in the peas."}) == "start 1 2, last 40 3, last 20 4");
    CHECK(moments_of({"Backen.", "In den letzten 10 Minuten den Deckel abnehmen."}) ==
          "start 1, last 20, last 10 2");
    CHECK(moments_of({"Al horno.", "Los últimos 20 minutos, sin tapa."}) == "start 1, last 20 2");
    CHECK(moments_of({"Bake it.", "Turn the heat down for the last 1 hour."}) ==
          "start 1, last 60 2, last 20");
}

TEST_CASE("a step of the start that begins with a time stands at that time") {
    CHECK(moments_of({"Bake it.", "After 30 min turn it.", "Stir in the peas."}) ==
          "start 1, after 30 2, last 20 3");
    CHECK(moments_of({"Backen.", "Nach 30 Minuten wenden."}) == "start 1, after 30 2, last 20");
    CHECK(moments_of({"Al horno.", "A los 30 min darle la vuelta."}) ==
          "start 1, after 30 2, last 20");
    CHECK(moments_of({"Bake it.", "Turn it after 30 min."}) == "start 1 2, last 20");
    CHECK(moments_of({"Bake it.", "After 10 min more turn it."}) == "start 1 2, last 20");
    CHECK(moments_of({"Bake it.", "After 30 min turn it.", "After 10 min turn it."}) ==
          "start 1, after 30 2 3, last 20"); // of the second nobody knows from when
    CHECK(moments_of({"Bake it.", "After 3 h turn it."}) == "start 1 2, last 20");
}

TEST_CASE("a step that says more, or would have to change its place, stays where it is") {
    CHECK(moments_of({"Warm it.", "Bake it, lid off for the last 10 min."}) ==
          "start 1 2, last 20");
    CHECK(moments_of({"Warm it.", "Lid off for the last 10 min.", "Stir in the peas."}) ==
          "start 1 2, last 20 3");
    CHECK(moments_of({"Warm it.", "Stir in the peas.", "Lid off for the last 30 min."}) ==
          "start 1, last 20 2 3");
    CHECK(moments_of({"Lid off for the last 30 min."}) == "start 1, last 20");
    CHECK(moments_of({"Warm it.", "It lasts 10 min.", "The last 10 onions go in."}) ==
          "start 1 2 3, last 20");
}

TEST_CASE("whatever the words, every step and every addition comes once and in order") {
    const std::vector<std::string> words = {"salt", "rice and peas", "peas", "the salt", "rice"};
    for (std::size_t shift = 0; shift < words.size(); ++shift) {
        std::vector<Finish> finish;
        std::vector<std::string> steps;
        for (std::size_t i = 0; i < words.size(); ++i) {
            const auto anchor = static_cast<Anchor>(i);
            finish.push_back(addition("2 " + words[(i * 2) % words.size()], anchor));
            steps.push_back("Add " + words[(i + shift) % words.size()] + ".");
        }
        std::vector<std::size_t> seen_steps;
        std::vector<std::size_t> seen_additions;
        for (const auto& moment : cook_sequence(dish(finish, steps))) {
            for (const auto& act : moment.acts) {
                seen_additions.insert(seen_additions.end(), act.additions.begin(),
                                      act.additions.end());
                if (act.step) {
                    seen_steps.push_back(*act.step);
                }
            }
        }
        CAPTURE(shift);
        CHECK(seen_steps == std::vector<std::size_t>{0, 1, 2, 3, 4});
        CHECK(seen_additions == std::vector<std::size_t>{0, 1, 2, 3, 4});
    }
}
