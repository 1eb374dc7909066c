#include "unit/intake/told.h"

#include <doctest/doctest.h>
#include <string>
#include <utility>
#include <vector>

using namespace thawslip;
using intake_test::told;

namespace {

const std::string good = R"([day]
made    = 2026-10-17
kitchen = "Orchard house"
freezer = "180 l"

[[package]]
dish      = "Squash and red lentil stew"
servings  = 6
bags      = 3
food      = "soup or stew"
weight    = "2.2 kg"
thickness = "30 mm"
contains  = ["celery"]

[package.thaw]
method = "refrigerator"

[[package.finish]]
add  = "200 g baby spinach"
when = "last 10 min"
bag  = "small bag taped to this one"

[package.cook]
in      = "slow cooker"
setting = "low"
time    = "7-9 h"
until   = "74 °C"
steps   = ["Tip it in.", "Stir."]

[[package.ingredient]]
add = "1.2 kg squash"
for = "cook day"
)";

std::string with(const std::string& from, const std::string& to) {
    auto text = good;
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

} // namespace

TEST_CASE("a day of preparing for which nothing is marked is a slip, and told") {
    const std::string made = "made    = 2026-10-17\n";
    const auto prepared = [&](const std::string& more, const std::string& day) {
        auto text = with(made, made + "prepared = " + day + "\n");
        text.replace(text.find("for = \"cook day\""), 16, more);
        return told(text);
    };
    const auto slip = prepared("for = \"cook day\"", "2026-10-16");
    CHECK(slip.starts_with("day.toml:3:12: caution: nothing is marked for that day\n"));
    CHECK(slip.find("or made = 2026-10-16 below a [[package]]") != std::string::npos);
    CHECK(prepared("for = \"day before\"", "2026-10-16").empty());
    CHECK(prepared("for = \"cook day\"", "2026-10-32").find("nothing is marked") ==
          std::string::npos); // an error is told alone
}

TEST_CASE("a whole description is read into kitchen values") {
    const auto outcome = intake_test::outcome_of(good);
    CHECK(outcome.faults.empty());
    const auto& day = outcome.day;
    REQUIRE(day.has_value());
    CHECK(kitchen::to_iso(day->made) == "2026-10-17");
    CHECK(day->kitchen == "Orchard house");
    CHECK(day->freezer_litres == 180.0);
    REQUIRE(day->packages.size() == 1);
    const auto& package = day->packages[0];
    CHECK(package.servings == 6);
    CHECK(package.bags == 3);
    CHECK(package.weight->grams == doctest::Approx(2200));
    CHECK(package.thickness->in_millimetres() == doctest::Approx(30));
    CHECK(package.thaw.method == kitchen::ThawMethod::Refrigerator);
    REQUIRE(package.finish.size() == 1);
    CHECK(package.finish[0].add.item == "baby spinach");
    CHECK(package.finish[0].when.offset == std::chrono::minutes{10});
    REQUIRE(package.cook.has_value());
    CHECK(package.cook->vessel == kitchen::Vessel::SlowCooker);
    CHECK(package.cook->steps.size() == 2);
    REQUIRE(package.ingredients.size() == 1);
    CHECK(package.ingredients[0].day == kitchen::IngredientDay::CookDay);
}

TEST_CASE("each mistake is told at its place, with what was expected") {
    struct Case {
        const char* from;
        const char* to;
        const char* text;
    };
    const Case cases[] = {
        {"method = \"refrigerator\"", "method = \"refridgerator\"",
         "day.toml:16:10: error: \"refridgerator\" is not a thaw method: expected "
         "\"refrigerator\", \"cold water\", \"running water\", \"microwave\" or \"from frozen\"\n"
         "    method = \"refridgerator\"\n"
         "             ^~~~~~~~~~~~~~~\n"
         "    hint: did you mean \"refrigerator\"?\n"},
        {"bags      = 3", "bgas      = 3",
         "day.toml:9:1: error: unknown key \"bgas\" in [[package]]\n"
         "    bgas      = 3\n"
         "    ^~~~\n"
         "    hint: did you mean \"bags\"?\n"},
        {"weight    = \"2.2 kg\"", "weight    = \"400 kg\"",
         "day.toml:11:13: error: weight must be from 1 g to 20 kg, not \"400 kg\"\n"
         "    weight    = \"400 kg\"\n"
         "                ^~~~~~~~\n"},
        {"servings  = 6", "servings  = 0",
         "day.toml:8:13: error: servings must be from 1 to 100, not 0\n"
         "    servings  = 0\n"
         "                ^\n"},
        {"when = \"last 10 min\"", "when = \"at the end\"",
         "day.toml:20:9: error: \"at the end\" cannot be read as when: expected the last minutes, "
         "where it still cooks, or at serving\n"
         "    when = \"at the end\"\n"
         "            ^~~~~~~~~~\n"
         "    hint: write, for example, \"at the start\", \"after 4 h\", \"halfway\", \"last 10 "
         "min\" or "
         "\"at serving\"\n"},
    };
    for (const auto& c : cases) {
        CHECK(told(with(c.from, c.to)) == c.text);
    }
}

TEST_CASE("what a description must not hold is refused") {
    struct Case {
        const char* about;
        const char* from;
        const char* to;
    };
    const std::string long_dish = "dish      = \"" + std::string(81, 'x') + "\"";
    const Case cases[] = {
        {"30 February", "made    = 2026-10-17", "made    = 2026-02-30"},
        {"a quoted date", "made    = 2026-10-17", "made    = \"2026-10-17\""},
        {"a year long gone", "made    = 2026-10-17", "made    = 1026-10-17"},
        {"a negative count", "bags      = 3", "bags      = -3"},
        {"more bags than a day can pack", "bags      = 3", "bags      = 100000"},
        {"a count that is no whole number", "bags      = 3", "bags      = 3.5"},
        {"a huge number", "bags      = 3", "bags      = 999999999999999999"},
        {"an empty dish", "dish      = \"Squash and red lentil stew\"", "dish      = \"\""},
        {"a blank dish", "dish      = \"Squash and red lentil stew\"", "dish      = \"   \""},
        {"a dish past its length", "dish      = \"Squash and red lentil stew\"", long_dish.c_str()},
        {"a control character", "dish      = \"Squash and red lentil stew\"",
         "dish      = \"Squash \\u0007 stew\""},
        {"a line break in a dish", "dish      = \"Squash and red lentil stew\"",
         "dish      = \"Squash\\nstew\""},
        {"a dish that is a number", "dish      = \"Squash and red lentil stew\"", "dish      = 7"},
        {"a weight without a unit", "weight    = \"2.2 kg\"", "weight    = \"2.2\""},
        {"a weight in litres", "weight    = \"2.2 kg\"", "weight    = \"2.2 l\""},
        {"a thickness of a metre", "thickness = \"30 mm\"", "thickness = \"1000 mm\""},
        {"a thickness that is a number", "thickness = \"30 mm\"", "thickness = 30"},
        {"a finish longer than the cooking", "when = \"last 10 min\"", "when = \"last 10 h\""},
        {"an amount of nothing", "add  = \"200 g baby spinach\"", "add  = \"200 g\""},
        {"a table where a text belongs", "kitchen = \"Orchard house\"", "kitchen = { a = 1 }"},
        {"an unknown table", "[package.cook]", "[package.cok]"},
        {"a number in a list of texts", "contains  = [\"celery\"]", "contains  = [\"celery\", 3]"},
        {"no package", "[[package]]", "[[packages]]"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.about);
        const auto text = told(with(c.from, c.to));
        CHECK(text.find("day.toml:") == 0);
        CHECK(text.find("error: ") != std::string::npos);
    }
}

TEST_CASE("all mistakes of a file are told together, in the order of the file") {
    auto text = with("servings  = 6", "servings  = 0");
    text.replace(text.find("\"2.2 kg\""), 8, "\"heavy\"");
    text.replace(text.find("\"74 °C\""), 8, "\"hot\"");
    const auto all = told(text);
    const auto first = all.find("day.toml:8:");
    const auto second = all.find("day.toml:11:");
    const auto third = all.find("day.toml:27:");
    CHECK(first != std::string::npos);
    CHECK(second != std::string::npos);
    CHECK(third != std::string::npos);
    CHECK(first < second);
    CHECK(second < third);
}

TEST_CASE("the same dish twice in a day would share bag ids and is refused at the second") {
    const auto text = good + "\n" + good.substr(good.find("[[package]]"));
    const auto all = told(text);
    CHECK(all.find("\"Squash and red lentil stew\" is listed twice in this day") !=
          std::string::npos);
}

TEST_CASE("the same dish is the same whether its date stands in the day or in the package") {
    auto second = good.substr(good.find("[[package]]"));
    second.replace(second.find("servings"), 0, "made = 2026-10-17\n");
    CHECK(told(good + "\n" + second).find("is listed twice in this day") != std::string::npos);
    second.replace(second.find("10-17"), 5, "10-18");
    CHECK(told(good + "\n" + second).empty());
}

TEST_CASE("a file without a day or without packages is told what it lacks") {
    CHECK(told("") == "day.toml:1:1: error: there is no [day], which says when the food was made\n"
                      "    hint: write, for example, [day] and below it made = 2026-10-17\n"
                      "day.toml:1:1: error: there is no [[package]]: a day has at least one\n"
                      "    hint: thawslip new DAY.toml writes a day to start from\n");
    CHECK(told("package = []\n[day]\nmade = 2026-10-17\n") ==
          "day.toml:1:11: error: there is no [[package]]: a day has at least one\n"
          "    package = []\n"
          "              ^~\n"
          "    hint: thawslip new DAY.toml writes a day to start from\n");
}

TEST_CASE("a fault inside a value is marked at its character, spaces before it or not") {
    CHECK(
        told(with("\"7-9 h\"", "\"  7-9 weeks\"")) ==
        "day.toml:26:18: error: \"7-9 weeks\" cannot be read as time: expected h or min after the "
        "number\n"
        "    time    = \"  7-9 weeks\"\n"
        "                     ^~~~~\n"
        "    hint: write, for example, time = \"7-9 h\"\n");
}

TEST_CASE("a freezer's size may be given in cubic feet") {
    const auto outcome = intake_test::outcome_of(with("\"180 l\"", "\"7 cu ft\""));
    REQUIRE(outcome.day.has_value());
    // NIST Special Publication 811, 2008, appendix B: 1 cubic foot is 0.02831685 cubic metres.
    CHECK(*outcome.day->freezer_litres == doctest::Approx(7 * 28.31685).epsilon(1e-6));
    CHECK(told(with("\"180 l\"", "\"7 buckets\""))
              .find("expected a number of litres or cubic feet") != std::string::npos);
}

TEST_CASE("a vessel that is nearly a known one is doubted, and the strict rules are kept") {
    Diagnostics faults;
    const auto document =
        toml::parse(with("\"slow cooker\"", "\"shlow coker\""), "day.toml", faults);
    CHECK(intake::read_day(document, faults).whole);
    REQUIRE(faults.size() == 1);
    CHECK(to_text(faults[0], document.text()) ==
          "day.toml:24:11: caution: no rules are known for cooking in \"shlow coker\"; those of a "
          "slow cooker are kept\n"
          "    in      = \"shlow coker\"\n"
          "              ^~~~~~~~~~~~~\n"
          "    hint: did you mean \"slow cooker\"?\n");
}

TEST_CASE("a mistake in one line does not hide the kitchen's refusals, nor make up others") {
    auto text = with("made    = 2026-10-17", "made    = 2026-02-30");
    text.replace(text.find("soup or stew"), 12, "soup or slew");
    CHECK(told(text) == "day.toml:2:11: error: there is no 2026-02-30 in the calendar: this month "
                        "has the days 01 to 28\n"
                        "    made    = 2026-02-30\n"
                        "              ^~~~~~~~~~\n"
                        "day.toml:10:13: error: \"soup or slew\" is not a kind of food known here\n"
                        "    food      = \"soup or slew\"\n"
                        "                ^~~~~~~~~~~~~~\n"
                        "    hint: did you mean \"soup or stew\"?\n");
}

TEST_CASE("the kitchen does not speak of a value that could not be read") {
    struct Case {
        const char* from;
        const char* to;
    };
    // Each would also be refused by the kitchen if it were taken for absent or for its default.
    const Case cases[] = {
        {"food      = \"soup or stew\"", "use_by = 2027-02-30"},
        {"food      = \"soup or stew\"", "use_by = 17.2.2027"},
        {"food      = \"soup or stew\"", "food = [\"\"]"},
        {"food      = \"soup or stew\"", "food = Stew"},
        {"food      = \"soup or stew\"", "use_by = 2026-12-01\nmade = 2026-11-31"},
        {"until   = \"74 °C\"", "until   = \"hot\""},
        {"time    = \"7-9 h\"", "time    = \"long\""},
        {"when = \"last 10 min\"", "when = soon"},
        {"method = \"refrigerator\"", "method = \"warm water\""},
    };
    for (const auto& c : cases) {
        CAPTURE(c.to);
        const auto outcome = intake_test::outcome_of(with(c.from, c.to));
        INFO(told(with(c.from, c.to)));
        CHECK(outcome.faults.size() == 1);
    }
}

TEST_CASE("a package without a method of thawing is thawed in the refrigerator") {
    const auto outcome =
        intake_test::outcome_of(with("[package.thaw]\nmethod = \"refrigerator\"\n", ""));
    CHECK(outcome.faults.empty());
    CHECK(outcome.day->packages[0].thaw.method == kitchen::ThawMethod::Refrigerator);
}

TEST_CASE("each thaw method is read as itself") {
    const std::pair<const char*, kitchen::ThawMethod> methods[] = {
        {"refrigerator", kitchen::ThawMethod::Refrigerator},
        {"cold water", kitchen::ThawMethod::ColdWater},
        {"Microwave", kitchen::ThawMethod::Microwave},
        {"from frozen", kitchen::ThawMethod::FromFrozen}};
    for (const auto& [word, method] : methods) {
        CAPTURE(word);
        const auto outcome =
            intake_test::outcome_of(with("\"refrigerator\"", "\"" + std::string{word} + "\""));
        REQUIRE(outcome.day.has_value());
        CHECK(outcome.day->packages[0].thaw.method == method);
    }
}

TEST_CASE("weights in pounds and ounces are converted into grams") {
    // NIST Handbook 44 (2024), appendix C: 1 lb = 453.592 37 g, 1 oz = 28.349 523 125 g.
    const std::pair<const char*, double> weights[] = {
        {"4 lb 14 oz", 2211.2628}, {"2.2 kg", 2200.0}, {"5 lb", 2267.96185},
        {"80 oz", 2267.96185},     {"½ kg", 500.0},    {"900000 mg", 900.0}};
    for (const auto& [written, grams] : weights) {
        CAPTURE(written);
        const auto outcome =
            intake_test::outcome_of(with("\"2.2 kg\"", "\"" + std::string{written} + "\""));
        REQUIRE(outcome.faults.empty());
        CHECK(outcome.day->packages[0].weight->grams == doctest::Approx(grams));
    }
}

TEST_CASE("sizes that no kitchen has are refused") {
    struct Case {
        const char* from;
        const char* to;
        const char* message;
    };
    const Case cases[] = {
        {"\"2.2 kg\"", "\"20.1 kg\"", "weight must be from 1 g to 20 kg, not \"20.1 kg\""},
        {"\"2.2 kg\"", "\"1 mg\"", "weight must be from 1 g to 20 kg, not \"1 mg\""},
        {"\"180 l\"", "\"1 l\"", "freezer must be from 5 l to 5000 l, not \"1 l\""},
        {"\"180 l\"", "\"99999 l\"", "freezer must be from 5 l to 5000 l, not \"99999 l\""},
        {"\"30 mm\"", "\"1 mm\"", "thickness must be from 2 mm to 300 mm, not \"1 mm\""},
        {"200 g baby", "101 kg baby", "add must be at most 100 kg, not \"101 kg baby spinach\""},
        {"200 g baby", "999 l baby", "add must be at most 100 l, not \"999 l baby spinach\""},
        {"200 g baby", "10001 baby", "add must be at most 10000, not \"10001 baby spinach\""},
        {"\"74 °C\"", "\"19 °C\"",
         "until must be from 20 °C to 130 °C in the middle, not \"19 °C\""},
        {"\"74 °C\"", "\"350 °F\"",
         "until must be from 20 °C to 130 °C in the middle, not \"350 °F\""},
        {"\"7-9 h\"", "\"7-90 h\"",
         "\"7-90 h\" cannot be read as time: a time is above 0 and at most 72 h"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.to);
        const auto outcome = intake_test::outcome_of(with(c.from, c.to));
        REQUIRE(outcome.faults.size() == 1);
        CHECK(outcome.faults[0].message == c.message);
    }
}

TEST_CASE("sizes are taken at both ends of what a kitchen has") {
    const std::pair<const char*, std::vector<const char*>> cases[] = {
        {"\"2.2 kg\"", {"\"1 g\"", "\"20 kg\""}},
        {"\"180 l\"", {"\"5 l\"", "\"5000 l\""}},
        {"\"30 mm\"", {"\"2 mm\"", "\"300 mm\""}},
        {"200 g baby",
         {"100 kg baby", "100000 g baby", "100 l baby", "100000 ml baby", "10000 baby"}},
        {"\"74 °C\"", {"\"20 °C\"", "\"130 °C\""}},
        {"\"7-9 h\"", {"\"1 min\"", "\"72 h\"", "\"71-72 h\""}},
    };
    for (const auto& [from, all] : cases) {
        for (const auto* to : all) {
            CAPTURE(std::string{to});
            for (const auto& fault : intake_test::outcome_of(with(from, to)).faults) {
                CAPTURE(fault.message); // of the kitchen's rules, as for 1 g in six servings
                CHECK(fault.message.find("must be") == std::string::npos);
                CHECK(fault.message.find("cannot be read") == std::string::npos);
            }
        }
    }
}

TEST_CASE("a key that no table has is refused in every table") {
    std::size_t tables = 0;
    for (auto at = good.find('['); at != std::string::npos; at = good.find("\n[", at + 1)) {
        const auto end_of_line = good.find('\n', at + 1);
        auto text = good;
        text.insert(end_of_line + 1, "zzqx = 1\n");
        const auto header = good.substr(at, end_of_line - at);
        CAPTURE(header);
        CHECK(told(text).find("zzqx") != std::string::npos);
        ++tables;
    }
    CHECK(tables == 6);
}
