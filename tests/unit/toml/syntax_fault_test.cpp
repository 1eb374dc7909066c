#include "support/random.h"
#include "toml/document.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip;

namespace {

std::string told(const std::string& text) {
    Diagnostics faults;
    const auto document = toml::parse(text, "d.toml", faults);
    std::string all;
    for (const auto& fault : faults) {
        all += to_text(fault, document.text());
    }
    return all;
}

} // namespace

TEST_CASE("a syntax error is told at the culprit, with what to write instead") {
    struct Case {
        const char* text;
        const char* told;
    };
    const Case cases[] = {
        {"made = 2027-02-30\n", "d.toml:1:8: error: there is no 2027-02-30 in the calendar: this "
                                "month has the days 01 to 28\n"
                                "    made = 2027-02-30\n"
                                "           ^~~~~~~~~~\n"},
        {"made = 2026-1-7 # first\n",
         "d.toml:1:8: error: \"2026-1-7\" is not a date\n"
         "    made = 2026-1-7 # first\n"
         "           ^~~~~~~~\n"
         "    hint: a date is year-month-day with two digits each, such as 2026-01-07\n"},
        {"made = 17.10.2026\n", "d.toml:1:8: error: \"17.10.2026\" is not a value of TOML\n"
                                "    made = 17.10.2026\n"
                                "           ^~~~~~~~~~\n"
                                "    hint: a date is year-month-day, such as 2026-10-17\n"},
        {"until = 74 °C\n", "d.toml:1:9: error: \"74 °C\" is not a value of TOML\n"
                            "    until = 74 °C\n"
                            "            ^~~~~\n"
                            "    hint: text stands in double quotes: until = \"74 °C\"\n"},
        {"dish = “Plum and ginger compote”\n",
         "d.toml:1:8: error: \"“Plum and ginger compote”\" is not a value of TOML\n"
         "    dish = “Plum and ginger compote”\n"
         "           ^~~~~~~~~~~~~~~~~~~~~~~~~\n"
         "    hint: use the straight quotes \" and \" of the keyboard\n"},
        {"dish = \"Bean and barley pot\nbags = 3\n",
         "d.toml:1:8: error: the text that begins here is not closed\n"
         "    dish = \"Bean and barley pot\n"
         "           ^~~~~~~~~~~~~~~~~~~~\n"
         "    hint: put \" at its end\n"},
        {"note = \"\"\"a\nb\nc\n", "d.toml:1:8: error: the text that begins here is not closed\n"
                                   "    note = \"\"\"a\n"
                                   "           ^~~~\n"
                                   "    hint: put \"\"\" at its end\n"},
        {"dish = \"The \"best\" stew\"\n",
         "d.toml:1:14: error: the text has ended, but more follows in its line\n"
         "    dish = \"The \"best\" stew\"\n"
         "                 ^~~~~~~~~~~\n"
         "    hint: a double quote inside a text is written \\\"\n"},
        {"bags = 3\nbags = 4\n", "d.toml:2:1: error: \"bags\" is set a second time\n"
                                 "    bags = 4\n"
                                 "    ^~~~\n"
                                 "    hint: one table holds each key once\n"},
        {"[package]\n[package]\n", "d.toml:2:1: error: [package] stands here a second time\n"
                                   "    [package]\n"
                                   "    ^~~~~~~~~\n"
                                   "    hint: write all its keys below the first; where "
                                   "several may stand, each begins with [[package]]\n"},
        {"[day\n", "d.toml:1:1: error: \"[day\" is not a table's header\n"
                   "    [day\n"
                   "    ^~~~\n"
                   "    hint: write [name] or, for one of several, [[name]]\n"},
        {"steps = [Tip it in, Stir]\n", "d.toml:1:10: error: \"Tip it in\" is not a value of TOML\n"
                                        "    steps = [Tip it in, Stir]\n"
                                        "             ^~~~~~~~~\n"
                                        "    hint: text stands in double quotes: \"Tip it in\"\n"},
        {"steps = [\"a\" \"b\"]\n", "d.toml:1:14: error: a comma is missing before \"b\"\n"
                                    "    steps = [\"a\" \"b\"]\n"
                                    "                 ^~~\n"},
        {"steps = [\n  \"a\",\nbags = 3\n",
         "d.toml:1:9: error: the bracket that begins here is not closed\n"
         "    steps = [\n"
         "            ^\n"
         "    hint: put ] before line 3, which begins something else\n"},
        {"a = \"x\x01\"\n", "d.toml:1:7: error: the control character U+0001 is not allowed in "
                            "TOML\n"
                            "    a = \"x \"\n"
                            "          ^\n"},
        {"made: 2026-10-17\n", "d.toml:1:1: error: \"made: 2026-10-17\" is not key = value\n"
                               "    made: 2026-10-17\n"
                               "    ^~~~~~~~~~~~~~~~\n"
                               "    hint: write made = 2026-10-17\n"},
        {"a = Oma's stew\n", "d.toml:1:5: error: \"Oma's stew\" is not a value of TOML\n"
                             "    a = Oma's stew\n"
                             "        ^~~~~~~~~~\n"
                             "    hint: text stands in double quotes: a = \"Oma's stew\"\n"},
        {"a = True\n", "d.toml:1:5: error: \"True\" is not a value of TOML\n"
                       "    a = True\n"
                       "        ^~~~\n"
                       "    hint: write true or false in lower case\n"},
        {"a =\n", "d.toml:1:4: error: \"a\" has no value\n"
                  "    a =\n"
                  "       ^\n"
                  "    hint: write a = and a value, or remove the line\n"},
        {"a = \"caf\xE9\"\n", "d.toml:1:9: error: the byte 0xE9 is not UTF-8\n"
                              "    hint: save the file as UTF-8\n"},
    };
    for (const auto& c : cases) {
        CHECK(told(c.text) == c.told);
    }
}

TEST_CASE("what TOML 1.1 allows and 1.0 does not is told as such") {
    // TOML v1.1.0, toml.io, 2025, changes since 1.0.0: line breaks and a last comma in inline
    // tables, \e and \xHH, seconds that may be left out.
    const char* texts[] = {"t = 07:30\n",     "t = 2026-10-17T07:30\n", "a = {b = 1,}\n",
                           "a = {\nb = 1}\n", "a = \"\\e\"\n",          "a = \"\\x41\"\n"};
    for (const char* text : texts) {
        CAPTURE(text);
        CHECK(told(text).find("TOML 1.1") != std::string::npos);
    }
}

TEST_CASE("a file with a byte-order mark or carriage returns is placed as one without") {
    const std::string plain = "[day]\nmade = nothing\n";
    const std::string marked = "\xEF\xBB\xBF[day]\r\nmade = nothing\r\n";
    CHECK(told(marked).find("d.toml:2:8: error: \"nothing\" is not") == 0);
    CHECK(told(plain).find("d.toml:2:8: error: \"nothing\" is not") == 0);
}

TEST_CASE("twenty thousand heaps of TOML's own signs are read or told, never a crash") {
    test_support::Random random{5};
    const std::string_view pieces[] = {
        "a", "b",  "=",  " = ", "\n",     "\r\n", "[",   "]",  "[[", "]]",   "{",     "}",
        ",", ".",  "\"", "'",   "\"\"\"", "'''",  "#",   "\\", "1",  "07:3", "2026-", "true",
        "é", "\t", "°",  "“",   "\x7F",   "\xFF", "inf", "-",  "_",  "\\u",  "0x"};
    for (int round = 0; round < 20'000; ++round) {
        std::string text;
        for (std::size_t count = random.below(16); count > 0; --count) {
            text += pieces[random.below(std::size(pieces))];
        }
        Diagnostics faults;
        const auto document = toml::parse(text, "d.toml", faults);
        CHECK(document.well_formed() == faults.empty());
        for (const auto& fault : faults) {
            CHECK(to_text(fault, document.text()).find("d.toml:") == 0);
            CHECK_FALSE(fault.message.empty());
        }
    }
}
