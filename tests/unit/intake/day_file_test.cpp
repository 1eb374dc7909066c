#include "intake/day_file.h"
#include "support/command.h"
#include "support/random.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip;

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

/// All diagnostics of a description, as the cook sees them.
std::string told(const std::string& text) {
    Diagnostics faults;
    const auto document = toml::parse(text, "day.toml", faults);
    const auto reading = intake::read_day(document, faults);
    sort_by_place(faults);
    std::string all;
    for (const auto& fault : faults) {
        all += to_text(fault, document.text());
    }
    CHECK(reading.whole == all.empty());
    return all;
}

std::string with(const std::string& from, const std::string& to) {
    auto text = good;
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

} // namespace

TEST_CASE("a whole description is read into kitchen values") {
    Diagnostics faults;
    const auto document = toml::parse(good, "day.toml", faults);
    const auto reading = intake::read_day(document, faults);
    REQUIRE(reading.whole);
    const auto& day = reading.day;
    CHECK(kitchen::to_iso(day.made) == "2026-10-17");
    CHECK(day.kitchen == "Orchard house");
    CHECK(day.freezer_litres == 180.0);
    REQUIRE(day.packages.size() == 1);
    const auto& package = day.packages[0];
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
    CHECK(package.ingredients[0].on_cook_day);
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
         "\"refrigerator\", \"cold water\", \"microwave\" or \"from frozen\"\n"
         "    method = \"refridgerator\"\n"
         "             ^~~~~~~~~~~~~~~\n"
         "    hint: did you mean \"refrigerator\"?\n"},
        {"bags      = 3", "bgas      = 3",
         "day.toml:9:1: error: unknown key \"bgas\" in [[package]]\n"
         "    bgas      = 3\n"
         "    ^~~~\n"
         "    hint: did you mean \"bags\"?\n"},
        {"weight    = \"2.2 kg\"", "weight    = \"400 kg\"",
         "day.toml:11:13: error: a bag of 400 kg is too heavy: at most 20 kg\n"
         "    weight    = \"400 kg\"\n"
         "                ^~~~~~~~\n"},
        {"servings  = 6", "servings  = 0",
         "day.toml:8:13: error: servings must be from 1 to 100, not 0\n"
         "    servings  = 0\n"
         "                ^\n"},
        {"when = \"last 10 min\"", "when = \"at the end\"",
         "day.toml:20:9: error: \"at the end\" does not say when: expected when it goes in\n"
         "    when = \"at the end\"\n"
         "            ^~~~~~~~~~\n"
         "    hint: expected \"at the start\", \"after 4 h\", \"halfway\", \"last 10 min\" or "
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
        {"neither food nor use_by", "food      = \"soup or stew\"", ""},
        {"a weight without a unit", "weight    = \"2.2 kg\"", "weight    = \"2.2\""},
        {"a weight in litres", "weight    = \"2.2 kg\"", "weight    = \"2.2 l\""},
        {"a thickness of a metre", "thickness = \"30 mm\"", "thickness = \"1000 mm\""},
        {"a thickness that is a number", "thickness = \"30 mm\"", "thickness = 30"},
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
    CHECK(all.find("\"Squash and red lentil stew\" stands twice in this day") != std::string::npos);
}

TEST_CASE("the same dish is the same whether its date stands in the day or in the package") {
    auto second = good.substr(good.find("[[package]]"));
    second.replace(second.find("servings"), 0, "made = 2026-10-17\n");
    CHECK(told(good + "\n" + second).find("stands twice in this day") != std::string::npos);
    second.replace(second.find("10-17"), 5, "10-18");
    CHECK(told(good + "\n" + second).empty());
}

TEST_CASE("a file without a day or without packages is told what it lacks") {
    CHECK(told("") == "day.toml: error: there is no [day], which says when the food was made\n"
                      "    hint: write, for example, [day] and below it made = 2026-10-17\n"
                      "day.toml: error: there is no [[package]]: a day has at least one\n"
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
    Diagnostics faults;
    const auto document = toml::parse(with("\"180 l\"", "\"7 cu ft\""), "day.toml", faults);
    const auto reading = intake::read_day(document, faults);
    REQUIRE(reading.whole);
    // NIST Special Publication 811, 2008, appendix B: 1 cubic foot is 0.02831685 cubic metres.
    CHECK(*reading.day.freezer_litres == doctest::Approx(7 * 28.31685).epsilon(1e-6));
    CHECK(told(with("\"180 l\"", "\"7 buckets\""))
              .find("expected a number of litres or cubic feet") != std::string::npos);
}

TEST_CASE("a vessel that is nearly a known one is doubted, since its rules are then not applied") {
    Diagnostics faults;
    const auto document =
        toml::parse(with("\"slow cooker\"", "\"slow coker\""), "day.toml", faults);
    CHECK(intake::read_day(document, faults).whole);
    REQUIRE(faults.size() == 1);
    CHECK(to_text(faults[0], document.text()) ==
          "day.toml:24:11: caution: no rules are known for cooking in \"slow coker\"\n"
          "    in      = \"slow coker\"\n"
          "              ^~~~~~~~~~~~\n"
          "    hint: did you mean \"slow cooker\"?\n");
}

TEST_CASE("a package with a mistake keeps its dates, so that the kitchen can judge them too") {
    const auto reduced = [](const std::string& text) {
        Diagnostics faults;
        const auto document = toml::parse(text, "day.toml", faults);
        const auto reading = intake::read_day(document, faults);
        CHECK_FALSE(reading.whole);
        return reading.day.packages;
    };
    const auto packages = reduced(with("servings  = 6", "servings  = 0"));
    REQUIRE(packages.size() == 1);
    CHECK(packages[0].dish == "Squash and red lentil stew");
    CHECK(packages[0].food == std::vector<std::string>{"soup or stew"});
    CHECK_FALSE(packages[0].cook.has_value());
    CHECK(reduced(with("\"soup or stew\"", "7")).empty());
    CHECK(reduced(with("\"Squash and red lentil stew\"", "\"\"")).empty());
}

TEST_CASE("the place of a value is the line it was written on") {
    Diagnostics faults;
    const auto document = toml::parse(good, "day.toml", faults);
    const auto reading = intake::read_day(document, faults);
    REQUIRE(reading.whole);
    const auto& day = reading.day;
    const auto& package = day.packages[0];
    CHECK(document.place(package.finish[0].where.key("when")).line == 20);
    CHECK(document.place(package.cook->where.key("until")).line == 27);
    CHECK(document.place(package.thaw.where.key("method")).line == 16);
    CHECK(document.place(package.where.key("no-such-key")).line == 6);
}

TEST_CASE("every prefix of a good file gives a day or a placed mistake, never a crash") {
    for (std::size_t length = 0; length < good.size(); ++length) {
        Diagnostics faults;
        const auto document = toml::parse(good.substr(0, length), "day.toml", faults);
        const auto reading = intake::read_day(document, faults);
        CHECK(reading.whole != has_errors(faults));
    }
}

TEST_CASE("two thousand random changes to a file give a day or a mistake, never a crash") {
    test::Random random{7};
    for (int round = 0; round < 2000; ++round) {
        auto text = good;
        for (std::size_t edits = 1 + random.below(4); edits > 0; --edits) {
            const auto at = random.below(text.size());
            switch (random.below(4)) {
            case 0: text[at] = static_cast<char>(random.below(256)); break;
            case 1: text.erase(at, 1 + random.below(5)); break;
            case 2:
                text.insert(at, text.substr(random.below(text.size()), random.below(20)));
                break;
            default: text.insert(at, 1, "[]{}=\"'.\n#,-"[random.below(12)]); break;
            }
        }
        Diagnostics faults;
        const auto document = toml::parse(text, "day.toml", faults);
        const auto reading = intake::read_day(document, faults);
        CHECK(reading.whole != has_errors(faults));
        for (const auto& fault : faults) {
            CHECK_FALSE(to_text(fault, document.text()).empty());
        }
    }
}

TEST_CASE("README shows every key that a description may have") {
    const auto readme = test_support::read_file(THAWSLIP_SOURCE_DIR "/README.md");
    for (const auto& key : intake::accepted_keys()) {
        const auto name = key.substr(key.rfind('.') + 1);
        CAPTURE(key);
        CHECK(readme.find(name) != std::string::npos);
    }
}
