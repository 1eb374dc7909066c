// The kitchen names values by key paths; the document turns them into lines and columns.

#include "unit/intake/told.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip;

namespace {

const std::string two_packages = R"([day]
made = 2026-10-17
[[package]]
dish = "Plum and ginger compote"
servings = 8
food = "fruit"
[[package]]
dish = "Chestnut and kale soup"
servings = 4
food = ["soup or stew", "blanched vegetables"]
contains = ["celery"]
thaw.method = "microwave"
[[package.finish]]
add = "½ l water"
when = "at the start"
[[package.finish]]
add = "40 g butter"
when = "last 5 min"
[package.cook]
in = "pot"
time = "35-45 min"
steps = ["Stir.",
         "Boil."]
[[package.ingredient]]
add = "1 kg kale"
)";

} // namespace

TEST_CASE("the place of every kitchen value is where it was written") {
    const auto outcome = intake_test::outcome_of(two_packages);
    REQUIRE(outcome.day.has_value());
    const auto& package = outcome.day->packages.at(1);
    struct Case {
        KeyPath key;
        std::uint32_t line, column;
    };
    const Case cases[] = {
        {outcome.day->packages.at(0).where.key("dish"), 4, 8},
        {package.where, 7, 1},
        {package.where.key("food"), 10, 8},
        {package.where.key("food").index(1), 10, 25},
        {package.where.key("contains").index(0), 11, 13},
        {package.thaw.where.key("method"), 12, 15},
        {package.finish.at(0).where, 13, 1},
        {package.finish.at(0).where.key("add"), 14, 7},
        {package.finish.at(1).where.key("when"), 18, 8},
        {package.cook->where, 19, 1},
        {package.cook->where.key("time"), 21, 8},
        {package.cook->where.key("steps").index(1), 23, 10},
        {package.ingredients.at(0).where.key("add"), 25, 7},
        {KeyPath{"package[2].finish[1].when"}, 15, 8},
        {KeyPath{"day.made"}, 2, 8},
    };
    for (const auto& c : cases) {
        CAPTURE(c.key.text());
        const auto where = outcome.document.place(c.key);
        CHECK(where.line == c.line);
        CHECK(where.column == c.column);
    }
}

TEST_CASE("what is not written is placed at the nearest that is") {
    const auto outcome = intake_test::outcome_of(two_packages);
    struct Case {
        const char* key;
        std::uint32_t line;
    };
    const Case cases[] = {{"package[2].cook.until", 19},
                          {"package[1].cook.in", 3},
                          {"package[2].finish[9].when", 13},
                          {"package[9]", 3},
                          {"no.such.key", 1},
                          {"", 1},
                          {"package[0].dish", 3},
                          {"package[", 3},
                          {"package[2", 7},
                          {"package[x].dish", 3},
                          {"..", 1},
                          {"]", 1}};
    for (const auto& c : cases) {
        CAPTURE(c.key);
        CHECK(outcome.document.place(KeyPath{c.key}).line == c.line);
    }
}

TEST_CASE("what the kitchen refuses is placed at the second package's finish") {
    auto text = two_packages;
    text.replace(text.find("last 5 min"), 10, "last 5 h");
    CHECK(intake_test::told(text) ==
          "day.toml:18:8: error: 300 minutes is longer than the dish cooks, 45 minutes\n"
          "    when = \"last 5 h\"\n"
          "           ^~~~~~~~~~\n");
}

TEST_CASE("a fault inside a text is marked from the word that is wrong") {
    struct Case {
        const char* written;
        std::uint32_t column;
    };
    // The column of the fault in `when = …`: after the quote, the spaces and the words before it.
    const Case cases[] = {{"\"last 5 weeks\"", 16},
                          {"\"  last   5 weeks\"", 20},
                          {"\"After\u00A04 fortnights\"", 17},
                          {"'last ten min'", 14},
                          {"\"last \\u0031 week\"", 8}};
    for (const auto& c : cases) {
        CAPTURE(c.written);
        auto text = two_packages;
        text.replace(text.find("\"last 5 min\""), 12, c.written);
        const auto outcome = intake_test::outcome_of(text);
        REQUIRE(outcome.faults.size() == 1);
        CHECK(outcome.faults[0].where.line == 18);
        CHECK(outcome.faults[0].where.column == c.column);
    }
}
