// A new day to start from: by options, by answers, in three languages, and what `check` makes of
// it.

#include "app/new_day/interview.h"
#include "intake/day_file.h"
#include "support/command.h"
#include "wording/language.h"

#include <deque>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::app;
using namespace thawslip::test_support;
using service::new_day_text;
using service::NewDish;

namespace {

const std::string program = "XDG_CONFIG_HOME=/nonexistent XDG_DATA_HOME=/nonexistent "
                            "SOURCE_DATE_EPOCH=1792238400 " THAWSLIP_PROGRAM " ";

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// What is asked is kept; the answers come in their order, and then none.
struct Answers {
    std::deque<std::string> left;
    std::vector<std::string> asked;

    Ask ask() {
        return [this](const std::string& question) -> std::optional<std::string> {
            asked.push_back(question);
            if (left.empty()) {
                return std::nullopt;
            }
            auto answer = left.front();
            left.pop_front();
            return answer;
        };
    }
};

intake::Reading read_day(const std::string& text, Diagnostics& faults) {
    return intake::read_day(toml::parse(text, "day.toml", faults), faults);
}

} // namespace

TEST_CASE("where nobody sits at a terminal, a sample day is written, in the language that is set") {
    const ScratchFolder folder;
    for (const auto& language : wording::shipped_languages()) {
        CAPTURE(language);
        const auto file = shell_word(folder / (language + ".toml"));
        CHECK(run(program + "new --language " + language + " " + file + " </dev/null").status == 0);
        CHECK(run(program + "check " + file).status == 0);
        const auto text = read_file(folder / (language + ".toml"));
        Diagnostics faults;
        const auto reading = read_day(text, faults);
        CHECK(faults.empty());
        CHECK(reading.day.packages.size() == 1);
        CHECK(reading.day.made == kitchen::Date{std::chrono::year{2026} / 10 / 17});
        CHECK_FALSE(has(text, "@"));
    }
    CHECK(has(read_file(folder / "es.toml"), "# opcional"));
    CHECK(has(read_file(folder / "de.toml"), "# freiwillig"));
}

TEST_CASE("a day for so many dishes has so many blocks, and check asks for what is empty in each") {
    const ScratchFolder folder;
    for (const auto& language : wording::shipped_languages()) {
        CAPTURE(language);
        const auto file = folder / (language + "-blank.toml");
        CHECK(run(program + "new --language " + language +
                  " --dishes 3 --dish 'Quince and \"red\" onion tart' --kitchen Cellar " +
                  shell_word(file))
                  .status == 0);
        Diagnostics faults;
        const auto day = read_day(read_file(file), faults).day;
        CHECK(day.packages.size() == 3);
        CHECK(day.kitchen == "Cellar");
        CHECK(day.packages.front().dish == "Quince and \"red\" onion tart");
        const auto checked = run(program + "check " + shell_word(file));
        CHECK(checked.status == 1);
        CHECK(has(checked.err, "dish is empty"));
        CHECK(has(checked.err, "food is empty"));
        CHECK(has(checked.err, "servings must be from 1 to 100"));
        for (const auto* kind : {"soup or stew", "raw poultry pieces", "blanched vegetables"}) {
            CHECK(has(read_file(file), kind)); // kinds of food as remarks
        }
    }
}

TEST_CASE("answers fill a day in, and a number that cannot be is asked for again") {
    Answers answers{{"2", "Pear crumble", "six", "0", "6", "3", "cake", "800 g", "25 mm",
                     "Leek soup", "4", "", "soup"},
                    {}};
    const auto& english = wording::shipped_language("en");
    const auto dishes = ask_dishes(answers.ask(), 0, english);
    REQUIRE(dishes.size() == 2);
    CHECK(dishes[0].name == "Pear crumble");
    CHECK(dishes[0].servings == "6");
    CHECK(dishes[0].bags == "3");
    CHECK(dishes[0].thickness == "25 mm");
    CHECK(dishes[1].bags.empty());
    CHECK(dishes[1].food == "soup");
    CHECK(dishes[1].weight.empty()); // no more answers came
    CHECK(answers.asked[3] == "A whole number from 1 to 100, please:");
    Diagnostics faults;
    const auto day =
        read_day(new_day_text({kitchen::Date{std::chrono::year{2026} / 10 / 17}, "Orchard", dishes},
                              "en", "us", {"cake", "soup"}),
                 faults);
    CHECK(faults.empty());
    CHECK(day.day.packages[0].bags == 3);
    CHECK(day.day.packages[1].bags == 1);
}

TEST_CASE("a new day speaks as the prints do where food is declared by that list") {
    const service::NewDay day{kitchen::Date{std::chrono::year{2026} / 10 / 17}, "Orchard", {{}}};
    CHECK(has(new_day_text(day, "es", "us", {}), "en el refrigerador"));
    CHECK(has(new_day_text(day, "es", "eu", {}), "en el frigorífico"));
}

TEST_CASE("answers come from standard input with --ask, and a file that is there stays") {
    const ScratchFolder folder;
    const auto file = shell_word(folder / "asked.toml");
    const auto answers = "printf '1\\nPlum sauce\\n4\\n2\\nfruit\\n500 g\\n20 mm\\n' | ";
    const auto outcome = run(answers + program + "new --ask " + file);
    CHECK(outcome.status == 0);
    CHECK(has(outcome.err, "How many dishes?"));
    CHECK(run(program + "check " + file).status == 0);
    const auto again = run(answers + program + "new --ask " + file);
    CHECK(again.status == 1);
    CHECK(has(again.err, "already exists; nothing written"));
    CHECK(has(read_file(folder / "asked.toml"), "Plum sauce"));
}

TEST_CASE("words that are not UTF-8 are refused, and nothing is written") {
    const ScratchFolder folder;
    const auto file = folder / "bytes.toml";
    CHECK(run(program + "new --dish \"$(printf '\\377')\" " + shell_word(file)).status == 1);
    CHECK_FALSE(std::filesystem::exists(file));
}

TEST_CASE("a day is begun also where the program stands alone, without its layouts and fonts") {
    const ScratchFolder folder;
    std::filesystem::create_directory(folder / "bin");
    std::filesystem::copy_file(THAWSLIP_PROGRAM, folder / "bin/thawslip");
    const auto begun = run("cd " + shell_word(folder.path().string()) +
                           "; env -u THAWSLIP_DATA XDG_CONFIG_HOME=/nonexistent bin/thawslip new "
                           "day.toml </dev/null");
    CAPTURE(begun.err);
    CHECK(begun.status == 0);
    CHECK(has(read_file(folder / "day.toml"), "[day]"));
}
