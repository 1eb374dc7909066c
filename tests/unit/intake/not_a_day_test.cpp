// Valid TOML (TOML v1.0.0, toml.io/en/v1.0.0, 2021) that describes no day, as other programs and
// other sections of the standard have it. Written by hand after the standard's sections.

#include "unit/intake/told.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip;

TEST_CASE("TOML that is no day's description is refused, and says why") {
    struct Case {
        const char* about;
        const char* text;
        const char* reason;
    };
    const Case cases[] = {
        {"nothing", "", "there is no [day], which says when the food was made"},
        {"a comment", "# This is a full-line comment\n",
         "there is no [[package]]: a day has at least one"},
        {"a single value", "key = \"value\"\n", "unknown key \"key\" at the top of the file"},
        {"dotted keys", "site.\"orchard.org\" = true\n", "unknown key \"site\""},
        {"a multi-line text", "note = \"\"\"\nRoses\nViolets\"\"\"\n", "unknown key \"note\""},
        {"a literal text", "path = 'C:\\Users\\cook'\n", "unknown key \"path\""},
        {"numbers of all bases", "a = 0xBEEF\nb = 0o755\nc = 0b11\nd = 1_000\n",
         "unknown key \"c\""},
        {"infinity", "a = inf\nb = -nan\n", "unknown key \"b\""},
        {"an offset date-time", "[day]\nmade = 2026-10-17T07:32:00Z\n",
         "made must be a date, not a date with a time"},
        {"a local time", "[day]\nmade = 07:32:00\n", "made must be a date, not a time of day"},
        {"a day that is a number", "day = 17\n", "day must be a table, not the whole number 17"},
        {"a day that is a date", "day = 2026-10-17\n",
         "day must be a table, not the date 2026-10-17"},
        {"a day that is a list of tables", "[[day]]\nmade = 2026-10-17\n",
         "day must be a table, not a list"},
        {"a package that is a text", "package = \"stew\"\n",
         "package must be tables [[package]], not the text \"stew\""},
        {"a package of numbers", "package = [1, 2]\n",
         "package[2] must be a table [[package]], not the whole number 2"},
        {"packages of packages", "package = [[{dish = \"x\"}]]\n",
         "package[1] must be a table [[package]], not a list"},
        {"an inline package", "package = [{dish = \"x\"}]\n",
         "\"servings\" is missing in [[package]]"},
        {"a table where a text is wanted",
         "[day]\nmade = 2026-10-17\n[day.kitchen]\nname = \"x\"\n",
         "kitchen must be text in double quotes, not a table"},
        {"a boolean count", "[[package]]\nbags = true\n", "bags must be a whole number, not true"},
        {"a count without end", "[[package]]\nservings = inf\n",
         "servings must be a whole number, not the number inf"},
        {"a huge count", "[[package]]\nservings = 9223372036854775807\n",
         "servings must be from 1 to 100, not 9223372036854775807"},
        {"keys with odd names", "\"\" = 1\n'quo\"ted' = 2\n\"\\u0007\" = 3\n", "unknown key \"\""},
        {"a stock file", "name = \"a4\"\n[sheet]\nwidth = \"210 mm\"\n", "unknown key \"sheet\""},
        {"finishes of a text", "[[package]]\nfinish = \"spinach\"\n",
         "finish must be tables [[package.finish]], not the text \"spinach\""},
    };
    for (const auto& c : cases) {
        CAPTURE(c.about);
        const auto outcome = intake_test::outcome_of(c.text);
        CHECK(outcome.document.well_formed());
        CHECK(has_errors(outcome.faults));
        bool said = false;
        for (const auto& fault : outcome.faults) {
            CHECK(fault.where.line >= 1);
            said = said || fault.message.starts_with(c.reason);
        }
        INFO(intake_test::told(c.text));
        CHECK(said);
    }
}

TEST_CASE("a name that would drive a terminal is told without its control characters") {
    CHECK(intake_test::told("\"\\u001b[2J\" = 1\n[day]\nmade = 2026-10-17\n[[package]]\ndish = "
                            "\"x\"\nservings = 1\nfood = \"fruit\"\n") ==
          "day.toml:1:1: error: unknown key \"\uFFFD[2J\" at the top of the file\n"
          "    \"\\u001b[2J\" = 1\n"
          "    ^~~~~~~~~~~\n"
          "    hint: keys known here: day, package\n");
}
