// What is no TOML 1.0 (TOML v1.0.0, toml.io/en/v1.0.0, 2021), section by section, and what is told
// about it, word for word. The documents are written by hand.

#include "base/diagnostic.h"
#include "toml/document.h"

#include <doctest/doctest.h>
#include <string>

namespace syntax_test {

using namespace thawslip;

namespace {

std::string told(std::string text) {
    Diagnostics faults;
    const auto document = toml::parse(std::move(text), "x.toml", faults);
    CHECK_FALSE(document.well_formed());
    std::string all;
    for (const auto& fault : faults) {
        const auto whole = to_text(fault);
        all += whole.substr(whole.find(':') + 1); // line:column: error: …
    }
    return all;
}

struct Case {
    const char* text;
    const char* message;
};

void check(std::initializer_list<Case> cases) {
    for (const auto& [text, message] : cases) {
        CAPTURE(text);
        CHECK(told(text) == message);
    }
}

/// Of each text its first mistake is where these words stand.
void check_marked(std::initializer_list<Case> cases) {
    for (const auto& [text, words] : cases) {
        CAPTURE(text);
        Diagnostics faults;
        const auto document = toml::parse(text, "x.toml", faults);
        REQUIRE_FALSE(faults.empty());
        const auto at = std::string_view{text}.rfind(words);
        REQUIRE(at != std::string_view::npos);
        const std::string_view marked{words};
        const auto wanted = document.span({at, at + marked.size()});
        CHECK(faults[0].where.length == wanted.length);
        if (!marked.empty()) {
            CHECK(faults[0].where.line == wanted.line);
            CHECK(faults[0].where.column == wanted.column);
        }
    }
}

} // namespace

TEST_CASE("a key without its value, and a value without its key, are told") {
    check({
        {"a", "1:1: error: \"a\" is not key = value\n"},
        {"a =", "1:4: error: \"a\" has no value\n"
                "    hint: write a = and a value, or remove the line\n"},
        {"a = # soon", "1:4: error: \"a\" has no value\n"
                       "    hint: write a = and a value, or remove the line\n"},
        {"= 1", "1:1: error: a key is missing before the =\n"},
        {"a b = 1", "1:1: error: \"a b = 1\" is not key = value\n"},
        {"a: 1", "1:1: error: \"a: 1\" is not key = value\n"
                 "    hint: write a = 1\n"},
        {"a..b = 1", "1:3: error: \".\" stands where a name was expected\n"},
        {"é = 1", "1:1: error: \"é = 1\" is not key = value\n"
                  "    hint: a key is made of letters A to Z, digits, - and _; any other stands in "
                  "double quotes\n"},
    });
}

TEST_CASE("what stands behind a value is told") {
    check({
        {"a = 1 b = 2", "1:5: error: \"1 b = 2\" is not a value of TOML\n"
                        "    hint: each key stands on a line of its own\n"},
        {"a = 1,", "1:5: error: \"1,\" is not a value of TOML\n"
                   "    hint: a line ends without a comma\n"},
        {"a = \"x\", \"y\"",
         "1:8: error: \", \"y\"\" stands where the line should end\n"
         "    hint: several values stand in brackets with commas between; a remark begins with #; "
         "each key has a line of its own\n"},
        {"a = \"x\",", "1:8: error: \",\" stands where the line should end\n"
                       "    hint: a line ends without a comma\n"},
        {"a = [1] [2]", "1:9: error: \"[2]\" stands where the line should end\n"
                        "    hint: several values stand in brackets with commas between; a remark "
                        "begins with #; each key has a line of its own\n"},
        {"[a]]", "1:1: error: \"[a]]\" is not a table's header\n"
                 "    hint: write [name] or, for one of several, [[name]]\n"},
        {"a = \"The \"best\" stew\"",
         "1:11: error: the text has ended, but more follows in its line\n"
         "    hint: a double quote inside a text is written \\\"\n"},
        {"a = 'it's'", "1:9: error: the text has ended, but more follows in its line\n"
                       "    hint: put a text that holds a single quote in double quotes\n"},
        {"[a] b = 1", "1:5: error: a table's header stands alone in its line\n"
                      "    hint: begin a new line after the closing bracket\n"},
    });
}

TEST_CASE("a key or a table that is there already is told") {
    check({
        {"a = 1\na = 2", "2:1: error: \"a\" is set a second time\n"
                         "    hint: one table holds each key once\n"},
        {"a = {x = 1, x = 2}", "1:13: error: \"x\" is set a second time\n"
                               "    hint: one table holds each key once\n"},
        {"[a]\n[a]", "2:1: error: [a] stands here a second time\n"
                     "    hint: write all its keys below the first; where several may stand, each "
                     "begins with [[a]]\n"},
        {"[[a]]\n[a]", "2:1: error: [a] is already there as something else\n"},
        {"[a]\n[[a]]", "2:1: error: [[a]] is already there as something else\n"},
        {"a = []\n[[a]]", "2:1: error: [[a]] is already there as something else\n"},
        {"a = {}\n[a.b]\nx = 1", "2:1: error: [a.b] adds to a table that is written in braces\n"
                                 "    hint: write all its keys inside the braces, or none there\n"},
    });
}

TEST_CASE("a bracket or a name that is missing is told") {
    check({
        {"[a", "1:1: error: \"[a\" is not a table's header\n"
               "    hint: write [name] or, for one of several, [[name]]\n"},
        {"[]", "1:2: error: \"]\" stands where a name was expected\n"},
        {"[a.]", "1:4: error: \"]\" stands where a name was expected\n"},
        {"a = [1, 2", "1:5: error: the bracket that begins here is not closed\n"
                      "    hint: put ] at its end\n"},
        {"a = {x = 1", "1:5: error: the bracket that begins here is not closed\n"
                       "    hint: put } at its end\n"},
        {"a = {x = 1\n[b]", "1:5: error: the bracket that begins here is not closed\n"
                            "    hint: put } before line 2, which begins something else\n"},
        {"a = [\n1\n2]", "3:1: error: a comma is missing before \"2\"\n"},
        {"a = [1 2 3]", "1:8: error: a comma is missing before \"2 3\"\n"},
        {"a = [1,,2]", "1:8: error: a value is missing before the comma\n"},
        {"a = [1}]", "1:5: error: the bracket that begins here is not closed\n"
                     "    hint: put ] before the }\n"},
        {"a = [{x = 1]", "1:6: error: the bracket that begins here is not closed\n"
                         "    hint: put } before the ]\n"},
        {"a = {, x = 1}", "1:6: error: a key and its value are missing before the comma\n"},
        {"a = {x = }", "1:9: error: \"x\" has no value\n"
                       "    hint: write x = and a value, or remove the line\n"},
        {"a = {x = 1 y = 2}", "1:12: error: a comma is missing before \"y = 2\"\n"},
    });
}

TEST_CASE("what is wrong inside a text is told") {
    check({
        {"a = \"open", "1:5: error: the text that begins here is not closed\n"
                       "    hint: put \" at its end\n"},
        {"a = 'open", "1:5: error: the text that begins here is not closed\n"
                      "    hint: put ' at its end\n"},
        {"a = \"\"\"open\nb = 1\n", "1:5: error: the text that begins here is not closed\n"
                                    "    hint: put \"\"\" at its end\n"},
        {"a = \"\\q\"", "1:6: error: \"\\q\" is no escape of TOML\n"
                        "    hint: write a backslash twice, or the text in 'single quotes'\n"},
        {"a = \"\\ud800\"",
         "1:6: error: \"\\ud800\" is no character of Unicode\n"
         "    hint: write \\u and four hexadecimal digits, or \\U and eight; not D800 to DFFF\n"},
        {"a = \"\\u12\"",
         "1:6: error: \"\\u12\" is no character of Unicode\n"
         "    hint: write \\u and four hexadecimal digits, or \\U and eight; not D800 to DFFF\n"},
        {"a = \"x\x01\"", "1:7: error: the control character U+0001 is not allowed in TOML\n"},
        {"# x\x07", "1:4: error: the control character U+0007 is not allowed in TOML\n"},
        {"a = \xE2\x80\x9Cx\xE2\x80\x9D", "1:5: error: \"“x”\" is not a value of TOML\n"
                                          "    hint: use the straight quotes \" and \" of the "
                                          "keyboard\n"},
    });
}

TEST_CASE("what is no number, truth or date is told") {
    const std::string quotes = "    hint: text stands in double quotes: a = ";
    for (const char* value : {"1__0", "_1", "1_", "1e", "0x", "0xG", "0b2", "+0x1", "tru", "inff",
                              "7-9 h", "74 °C", "nul"}) {
        CAPTURE(value);
        const auto quoted = "\"" + std::string{value} + "\"";
        CHECK(told("a = " + std::string{value}) ==
              "1:5: error: " + quoted + " is not a value of TOML\n" + quotes + quoted + "\n");
    }
    check({
        {"a = True", "1:5: error: \"True\" is not a value of TOML\n"
                     "    hint: write true or false in lower case\n"},
        {"a = 01", "1:5: error: \"01\" is not a value of TOML\n"
                   "    hint: a number has no zeros in front\n"},
        {"a = 9223372036854775808", "1:5: error: \"9223372036854775808\" is not a value of TOML\n"
                                    "    hint: a whole number has at most 18 digits\n"},
        {"a = 1.", "1:5: error: \"1.\" is not a value of TOML\n"
                   "    hint: a number has digits before and after its point\n"},
        {"a = 10/17/2026", "1:5: error: \"10/17/2026\" is not a value of TOML\n"
                           "    hint: a date is year-month-day, such as 2026-10-17\n"},
        {"a = 2026-2-3", "1:5: error: \"2026-2-3\" is not a date\n"
                         "    hint: a date is year-month-day with two digits each, such as "
                         "2026-01-07\n"},
        {"a = 2026-10-17T25:00:00", "1:5: error: there is no time \"2026-10-17T25:00:00\": hours "
                                    "go from 00 to 23, minutes and "
                                    "seconds from 00 to 59\n"},
    });
}

TEST_CASE("text that lacks its quotes inside a list or a table is told") {
    for (const char* value : {"celery", "thyme", "fennel", "nuts", "ice", "7-9 h", "x y", "_"}) {
        CAPTURE(value);
        const auto quoted = "\"" + std::string{value} + "\"";
        CHECK(told("a = [\"q\", " + std::string{value} + "]\n") ==
              "1:11: error: " + quoted + " is not a value of TOML\n" +
                  "    hint: text stands in double quotes: " + quoted + "\n");
    }
    check({{"a = { m = cold water }", "1:11: error: \"cold water\" is not a value of TOML\n"
                                      "    hint: text stands in double quotes: \"cold water\"\n"}});
}

TEST_CASE("days that the Gregorian calendar lacks are told with the month's length") {
    // ISO 8601-1:2019, calendar dates; leap years after Inter gravissimas, 1582: 1900 and 2100 are
    // common years, 2000 and 2028 are leap years.
    check({
        {"a = 2026-02-30", "1:5: error: there is no 2026-02-30 in the calendar: this month has the "
                           "days 01 to 28\n"},
        {"a = 2028-02-30", "1:5: error: there is no 2028-02-30 in the calendar: this month has the "
                           "days 01 to 29\n"},
        {"a = 2100-02-29", "1:5: error: there is no 2100-02-29 in the calendar: this month has the "
                           "days 01 to 28\n"},
        {"a = 2026-11-31", "1:5: error: there is no 2026-11-31 in the calendar: this month has the "
                           "days 01 to 30\n"},
        {"a = 2026-10-00", "1:5: error: there is no 2026-10-00 in the calendar: this month has the "
                           "days 01 to 31\n"},
        {"a = 2026-13-01", "1:5: error: there is no 2026-13-01 in the calendar: months go from 01 "
                           "to 12\n"},
    });
    for (const char* day : {"a = 2000-02-29", "a = 2028-02-29", "a = 2026-12-31"}) {
        CAPTURE(day);
        Diagnostics faults;
        CHECK(toml::parse(day, "x.toml", faults).well_formed());
    }
}

TEST_CASE("what TOML 1.1 allows and 1.0 does not is told as that") {
    // TOML v1.1.0, toml.io/en/v1.1.0, 2025: escapes \x and \e, times without seconds, and inline
    // tables with newlines and a trailing comma.
    const std::string newer = "    hint: TOML 1.1 allows it, TOML 1.0 does not\n";
    check({
        {"a = \"\\x41\"", "1:6: error: the escape \\x is not part of TOML 1.0\n"
                          "    hint: TOML 1.1 has it; here write \\u00 and the two digits\n"},
        {"a = \"\\e[1m\"", "1:6: error: the escape \\e is not part of TOML 1.0\n"
                           "    hint: TOML 1.1 has it; here write \\u001b\n"},
        {"a = 07:30", "1:5: error: \"07:30\" is not a time of TOML 1.0\n"
                      "    hint: TOML 1.1 lets the seconds be left out; here add them, such as "
                      "07:30:00\n"},
        {"a = 2026-10-17T07:30", "1:5: error: \"2026-10-17T07:30\" is not a time of TOML 1.0\n"
                                 "    hint: TOML 1.1 lets the seconds be left out; here add them, "
                                 "such as 07:30:00\n"},
    });
    CHECK(told("a = {x = 1,}") ==
          "1:11: error: a table in braces must not end with a comma\n" + newer);
    CHECK(told("a = {\n  x = 1\n}") ==
          "1:6: error: a table in braces must be written in one line\n" + newer);
}

TEST_CASE("a mistake in one line does not hide those in other lines") {
    check({
        {"a = 2026-02-30\nb = x\nc = 1\nc = 2\nd = \"open\ne =\n",
         "1:5: error: there is no 2026-02-30 in the calendar: this month has the days 01 to 28\n"
         "2:5: error: \"x\" is not a value of TOML\n"
         "    hint: text stands in double quotes: b = \"x\"\n"
         "4:1: error: \"c\" is set a second time\n"
         "    hint: one table holds each key once\n"
         "5:5: error: the text that begins here is not closed\n"
         "    hint: put \" at its end\n"
         "6:4: error: \"e\" has no value\n"
         "    hint: write e = and a value, or remove the line\n"},
        // A text that goes on in the next line, and a bracket that stays open.
        {"a = \"open\nshut\"\nb = x\n", "1:5: error: the text that begins here is not closed\n"
                                        "    hint: put \" at its end\n"
                                        "3:5: error: \"x\" is not a value of TOML\n"
                                        "    hint: text stands in double quotes: b = \"x\"\n"},
        {"a = \"\"\"open\nmore\n[b]\nc = x\n",
         "1:5: error: the text that begins here is not closed\n"
         "    hint: put \"\"\" at its end\n"
         "4:5: error: \"x\" is not a value of TOML\n"
         "    hint: text stands in double quotes: c = \"x\"\n"},
        {"a = [\nb = x\n", "1:5: error: the bracket that begins here is not closed\n"
                           "    hint: put ] before line 2, which begins something else\n"
                           "2:5: error: \"x\" is not a value of TOML\n"
                           "    hint: text stands in double quotes: b = \"x\"\n"},
        {"b = [\n  x\n]\nc = y\n", "2:3: error: \"x\" is not a value of TOML\n"
                                   "    hint: text stands in double quotes: \"x\"\n"
                                   "4:5: error: \"y\" is not a value of TOML\n"
                                   "    hint: text stands in double quotes: c = \"y\"\n"},
        // A header that is none: its keys are looked through all the same.
        {"[a\nb = x\n[[c]\nd = 01\n", "1:1: error: \"[a\" is not a table's header\n"
                                      "    hint: write [name] or, for one of several, [[name]]\n"
                                      "2:5: error: \"x\" is not a value of TOML\n"
                                      "    hint: text stands in double quotes: b = \"x\"\n"
                                      "3:1: error: \"[[c]\" is not a table's header\n"
                                      "    hint: write [name] or, for one of several, [[name]]\n"
                                      "4:5: error: \"01\" is not a value of TOML\n"
                                      "    hint: a number has no zeros in front\n"},
    });
}

TEST_CASE("a spoilt document keeps its other values, and says which are lost") {
    Diagnostics faults;
    const auto document =
        toml::parse("[t]\nbad = 2026-02-30\ngood = 3\n[[u]]\nbad = x\n", "x.toml", faults);
    REQUIRE(faults.size() == 2);
    CHECK_FALSE(document.well_formed());
    REQUIRE(document.has_values());
    CHECK(faults[0].key == KeyPath{"t.bad"});
    CHECK(faults[1].key == KeyPath{"u[1].bad"});
    const auto* table = toml::member(document.root(), "t");
    REQUIRE(table != nullptr);
    CHECK(std::holds_alternative<toml::Unreadable>(toml::member(*table, "bad")->content));
    CHECK(std::get<std::int64_t>(toml::member(*table, "good")->content) == 3);
}

TEST_CASE("where a line belongs to no key there are no values") {
    for (const char* text : {"a: 1\nb = 1\n", "[a\nb = 1\n", "[a]\n[a]\n", "a = \"\"\"b\n"}) {
        Diagnostics faults;
        const auto document = toml::parse(text, "x.toml", faults);
        CHECK(faults.size() == 1);
        CHECK_FALSE(document.has_values());
        CHECK(document.text() == text);
    }
}

TEST_CASE("what a bracket or a text left open has spoilt is unreadable, and what follows is read") {
    for (const char* text : {"a = [\nb = 1\n", "a = {x = 1\nb = 1\n", "a = \"\"\"x\nb = 1\n",
                             "a = 'x\nb = 1\n", "a = [{x = [\n1,\nb = 1\n"}) {
        CAPTURE(text);
        Diagnostics faults;
        const auto document = toml::parse(text, "x.toml", faults);
        CHECK(faults.size() == 1);
        CHECK(faults.front().key == KeyPath{"a"});
        REQUIRE(document.has_values());
        CHECK(
            std::holds_alternative<toml::Unreadable>(toml::member(document.root(), "a")->content));
        CHECK(std::get<std::int64_t>(toml::member(document.root(), "b")->content) == 1);
    }
}

TEST_CASE("at most twenty-one mistakes of syntax are told") {
    std::string text;
    for (int i = 0; i < 50; ++i) {
        text += "a" + std::to_string(i) + " = x\n";
    }
    Diagnostics faults;
    toml::parse(text, "x.toml", faults);
    CHECK(faults.size() == 21);
}

TEST_CASE("what a word without quotes may have been meant as is told, or that it is a text") {
    const auto hint = [](const std::string& word) {
        const auto all = told("a = " + word);
        const auto at = all.find("hint: ");
        return at == std::string::npos ? "" : all.substr(at + 6, all.size() - at - 7);
    };
    for (const auto* curly : {"“", "”", "„", "‘", "’", "«"}) {
        CAPTURE(curly);
        CHECK(hint(curly + std::string{"x"}) ==
              "use the straight quotes \" and \" of the keyboard");
    }
    for (const auto* truth : {"True", "False", "TRUE", "FALSE"}) {
        CAPTURE(truth);
        CHECK(hint(truth) == "write true or false in lower case");
    }
    const std::string text = "text stands in double quotes: a = ";
    for (const std::string word :
         {"yes", "tRUE", "x“", "1x", "-01", "1:5", "7.5 kg", "12:30 Uhr"}) {
        CAPTURE(word);
        CHECK(hint(word) == text + "\"" + word + "\"");
    }
    CHECK(hint("007") == "a number has no zeros in front");
    CHECK(hint("99999999999999999999") == "a whole number has at most 18 digits");
    for (const auto* date :
         {"17.10.2026", "17/10/26", "1.1.26", "1/1/26", "03-10-2026", "3-10-26"}) {
        CAPTURE(date);
        CHECK(hint(date) == "a date is year-month-day, such as 2026-10-17");
    }
    for (const auto* date : {"3 Oct 2026", "3. Oktober 2026", "Oct 3 2026", "3rd of October 2026",
                             "3 de octubre de 2026", "03-Oct-2026"}) {
        CAPTURE(date);
        CHECK(hint(date) == "a date is year-month-day: a = 2026-10-03");
    }
    for (const std::string no_date : {"3 Oct", "7-9 h", "2026 plums", "12 mar", "3 jars 2026"}) {
        CAPTURE(no_date);
        CHECK(hint(no_date) == text + "\"" + no_date + "\"");
    }
    for (const auto* number : {"1.2.3", ".5", "5.", "."}) {
        CAPTURE(number);
        CHECK(hint(number) == "a number has digits before and after its point");
    }
    CHECK(hint("1/2") == text + "\"1/2\"");
    CHECK(hint("plum,") == "a line ends without a comma");
    CHECK(hint("plum b = 1") == "each key stands on a line of its own");
    for (const auto* quotes : {"plum\"", "plum[", "plum {"}) {
        CAPTURE(quotes);
        CHECK(hint(quotes).empty());
    }
    CHECK(hint("Oma's") == text + "\"Oma's\"");
}

TEST_CASE("what was meant as a date or a time is told as one") {
    const std::string digits = " is not a date\n    hint: a date is year-month-day with two digits "
                               "each, such as 2026-01-07\n";
    const std::string seconds =
        " is not a time of TOML 1.0\n    hint: TOML 1.1 lets the seconds be "
        "left out; here add them, such as 07:30:00\n";
    const std::string hours = ": hours go from 00 to 23, minutes and seconds from 00 to 59\n";
    const auto at_5 = [](const std::string& message) { return "1:5: error: " + message; };
    for (const std::string date : {"2026-1-7", "2026-01-7", "2026-", "2026-10-170", "2026-10"}) {
        CAPTURE(date);
        CHECK(told("a = " + date) == at_5("\"" + date + "\"" + digits));
    }
    for (const std::string time : {"07:30", "23:59", "07:30Z", "07:30+01:00", "2026-10-17 07:30",
                                   "2026-10-17T07:30-01:00"}) {
        CAPTURE(time);
        CHECK(told("a = " + time) == at_5("\"" + time + "\"" + seconds));
    }
    for (const std::string time : {"24:00:00", "07:60:00", "07:30:60", "2026-10-17T24:00:00",
                                   "2026-10-17T07:30:00+24:00", "07:30:00.", "07:30:00Z"}) {
        CAPTURE(time);
        CHECK(told("a = " + time) == at_5("there is no time \"" + time + "\"" + hours));
    }
    check({
        {"a = 2026-02-29T07:30:00",
         "1:5: error: there is no 2026-02-29 in the calendar: this month "
         "has the days 01 to 28\n"},
        {"a = 2026-00-10", "1:5: error: there is no 2026-00-10 in the calendar: months go from 01 "
                           "to 12\n"},
        {"a = 2026-04-31x",
         "1:5: error: there is no 2026-04-31 in the calendar: this month has the "
         "days 01 to 30\n"},
        {"a = 07:30 h", "1:5: error: \"07:30 h\" is not a value of TOML\n"
                        "    hint: text stands in double quotes: a = \"07:30 h\"\n"},
        {"a = 2026-Oct-17", "1:5: error: \"2026-Oct-17\" is not a value of TOML\n"
                            "    hint: a date is year-month-day: a = 2026-10-17\n"},
    });
}

TEST_CASE("where a colon or a blank parts a key from its value, the sign is shown") {
    check({
        {"made:2026",
         "1:1: error: \"made:2026\" is not key = value\n    hint: write made = 2026\n"},
        {"made 2026",
         "1:1: error: \"made 2026\" is not key = value\n    hint: write made = 2026\n"},
        {"made\t: 'x y' # z", "1:1: error: \"made�: 'x y' # z\" is not key = value\n"
                              "    hint: write made = 'x y' # z\n"},
        {"made:", "1:1: error: \"made:\" is not key = value\n"},
        {"made", "1:1: error: \"made\" is not key = value\n"},
        {"made x = 1", "1:1: error: \"made x = 1\" is not key = value\n"},
        {"(made) = 1", "1:1: error: \"(made) = 1\" is not key = value\n"
                       "    hint: a key is made of letters A to Z, digits, - and _; any other "
                       "stands in double quotes\n"},
        {"maß = 1", "1:1: error: \"maß = 1\" is not key = value\n"
                    "    hint: a key is made of letters A to Z, digits, - and _; any other "
                    "stands in double quotes\n"},
        {"  =1", "1:3: error: a key is missing before the =\n"},
    });
}

TEST_CASE("a table or a key over something else is told by what is there") {
    const std::string braces = " adds to a table that is written in braces\n"
                               "    hint: write all its keys inside the braces, or none there\n";
    const std::string something = " is already there as something else\n";
    const std::string second = " is set a second time\n    hint: one table holds each key once\n";
    CHECK(told("a = 1\n[a]\n") == "2:1: error: [a]" + something);
    CHECK(told("a = 1\n[a.b]\n") == "2:1: error: [a.b]" + something);
    CHECK(told("a = 1\n[[a.b]]\n") == "2:1: error: [[a.b]]" + something);
    CHECK(told("a = {}\n[[a.b]]\n") == "2:1: error: [[a.b]]" + braces);
    CHECK(told("a = {}\n[[a]]\n") == "2:1: error: [[a]]" + something);
    CHECK(told("a = {}\n[a]\n").starts_with("2:1: error: [a] stands here a second time\n"));
    CHECK(told("a.b = 1\n[a]\n").starts_with("2:1: error: [a] stands here a second time\n"));
    CHECK(told("[a.b]\n[[a]]\n") == "2:1: error: [[a]]" + something);
    CHECK(told("a = {}\na.b = 1\n") == "2:1: error: \"a.b\"" + braces);
    CHECK(told("a.b = {}\na.b.c = 1\n") == "2:3: error: \"a.b.c\"" + braces);
    CHECK(told("a = 1\na.b = 1\n") == "2:1: error: \"a\"" + something);
    CHECK(told("[a.b]\n[c]\n[a]\nb.x = 1\n") == "4:1: error: \"b\"" + something);
    CHECK(told("[[a.b]]\n[a]\nb.x = 1\n") == "3:1: error: \"b\"" + something);
    CHECK(told("a.b = 1\na.b = 2\n") == "2:1: error: \"a.b\"" + second);
    CHECK(told("a.b = 1\na = 2\n") == "2:1: error: \"a\"" + second);
    CHECK(told("a = {b = 1, b.c = 2}\n") == "1:13: error: \"b\"" + something);
    // And what is none of that.
    for (const auto* text :
         {"[a.b]\n[a]\n", "[a]\n[a.b]\n", "a.b = 1\na.c = 1\n", "[a]\nb.c = 1\n[a.b.d]\n",
          "[[a]]\n[a.b]\n[[a]]\n[a.b]\n", "[a.b.c]\n[a]\nx = 1\n[a.b]\n",
          "a = {b.c = 1, b.d = 2}\n", "[[a.b]]\n[a]\nx = 1\n", "[[a.b]]\n[[a.b]]\n[a.b.c]\n"}) {
        CAPTURE(text);
        Diagnostics faults;
        CHECK(toml::parse(text, "x.toml", faults).well_formed());
    }
}

TEST_CASE("a list and a table in braces are told by what is missing in them") {
    const std::string open = ": error: the bracket that begins here is not closed\n    hint: put ";
    const std::string newer = "    hint: TOML 1.1 allows it, TOML 1.0 does not\n";
    CHECK(told("a = [1,\n") == "1:5" + open + "] at its end\n");
    CHECK(told("a = [1,\n[b]\n") ==
          "1:5" + open + "] before line 2, which begins something else\n");
    CHECK(told("a = [1,\n\n[[b]] # c\n") ==
          "1:5" + open + "] before line 3, which begins something else\n");
    CHECK(told("a = {x = 1,\nb = 2\n") ==
          "1:12: error: a table in braces must be written in one line\n" + newer);
    CHECK(told("a = {x = 1 # c\nb = 2\n") ==
          "1:5" + open + "} before line 2, which begins something else\n");
    CHECK(told("a = {x = 1 # c\n}\n") ==
          "1:12: error: a table in braces must be written in one line\n" + newer);
    CHECK(told("a = {x = 1, # c\n y = 2}\n") ==
          "1:13: error: a table in braces must be written in one line\n" + newer);
    CHECK(told("a = {x = 1, }\n") ==
          "1:11: error: a table in braces must not end with a comma\n" + newer);
    CHECK(told("a = {,}\n")
              .starts_with("1:6: error: a key and its value are missing before the comma\n"));
    CHECK(told("a = {x = 1,, y = 2}\n") ==
          "1:12: error: a key and its value are missing before the comma\n");
    CHECK(told("a = [,1]\n") == "1:6: error: a value is missing before the comma\n");
    CHECK(told("a = [1,\n,2]\n") == "2:1: error: a value is missing before the comma\n");
    CHECK(told("a = [\"x\" \"y\"]\n") == "1:10: error: a comma is missing before \"y\"\n");
    CHECK(told("a = [[1] [2]]\n") == "1:10: error: a comma is missing before \"[2\"\n");
    CHECK(told("a = [1 true]\n") == "1:8: error: a comma is missing before \"true\"\n");
    CHECK(told("a = [1 {b = 2}]\n").starts_with("1:8: error: a comma is missing before "));
    CHECK(told("a = [1 'x']\n") == "1:8: error: a comma is missing before 'x'\n");
    CHECK(told("a = [1 pinch]\n") == "1:6: error: \"1 pinch\" is not a value of TOML\n"
                                     "    hint: text stands in double quotes: \"1 pinch\"\n");
    for (const auto* text : {"a = []", "a = [ ]", "a = [\n]", "a = [ # c\n # d\n]", "a = [1,]",
                             "a = [1 # c\n,]", "a = {}", "a = { }", "a = [\n[1],\n[2]\n]",
                             "a = [\n[1]\n]", "a = [{b = 1},\n{b = 2}]", "a = [\n  [ # c\n  ]\n]",
                             "a = [\n\"b\", 'c',\n]", "a = [\n[1.5],\n]", "a = [\n[true]\n]"}) {
        CAPTURE(text);
        Diagnostics faults;
        CHECK(toml::parse(text, "x.toml", faults).well_formed());
    }
}

TEST_CASE("after a mistake one key's lines are not told again as mistakes of their own") {
    CHECK(told("a = [x\n\"y\",\n]\nb = 1\n").starts_with("1:6: error: \"x\" is not a value"));
    for (const auto* rest : {"\"y\"", "'y'", "]", "}"}) {
        CAPTURE(rest);
        CHECK(told("a = x\n" + std::string{rest} + "\n") == told("a = x\n"));
        CHECK(told("a = 1\n" + std::string{rest} + "\n").find("is not key = value") !=
              std::string::npos);
    }
    CHECK(told("a = x\ny\n").find("2:1: error: \"y\" is not key = value") != std::string::npos);
    CHECK(told("a\n]\n") == told("a\n"));
    CHECK(told("a = x\nb = 1\n]\n").find("3:1: error") != std::string::npos);
}

TEST_CASE("the twenty-first mistake is the last that is told, wherever it stands") {
    const auto count = [](int mistakes) {
        std::string text;
        for (int i = 0; i < mistakes; ++i) {
            text += "a" + std::to_string(i) + " = x\n";
        }
        Diagnostics faults;
        const auto document = toml::parse(text + "last = 1\n", "x.toml", faults);
        CHECK(document.has_values() == (mistakes <= 20));
        return faults.size();
    };
    CHECK(count(19) == 19);
    CHECK(count(20) == 20);
    CHECK(count(21) == 21);
    CHECK(count(22) == 21);
}

TEST_CASE("what is marked is what is wrong, no less and no more") {
    check_marked({{"a b = 1 # c", "a b = 1 # c"},
                  {" = 1", "="},
                  {"  [a  # c", "[a  # c"},
                  {"[a]  b # c", "b # c"},
                  {"[a]\n [a] # c", "[a]"},
                  {"a = {}\n[a.b] # c", "[a.b]"},
                  {"a = 1\n\"a\" = 2", "\"a\""},
                  {"a . b = 1\na.b\t = 2", "a.b"},
                  {"a.bb = {}\na.bb.c = 1", "bb"},
                  {"a = 'x'  y z \nb = 1", "y z"},
                  {"[a.]", "]"},
                  {"a..b = 1", "."},
                  {"[a.é]", "é"},
                  {"[a. \nb = 1", ""},
                  {"a = 'x y # c\nb = 1", "'x y # c"},
                  {R"(a = "x\qy")", R"(\q)"},
                  {R"(a = "x\éy")", R"(\é)"},
                  {R"(a = "x\x41")", R"(\x)"},
                  {R"(a = "x\ey")", R"(\e)"},
                  {R"(a = "\u12y")", R"(\u12)"},
                  {R"(a = "\uD800y")", R"(\uD800)"},
                  {R"(a = "\UD8000000y")", R"(\UD8000000)"},
                  {"a = 'x\x01y'", "\x01"},
                  {"# \x7F x", "\x7F"},
                  {"a = [ 1,\n", "["},
                  {"a = [{ b = 1\n", "{"},
                  {"a = [ , 1]", ","},
                  {"a = { , b = 1}", ","},
                  {"a = {b = 1 , }", ","},
                  {"a = {b = 1 # c\n}", "#"},
                  {"a = [1 22 , 3]", "22"},
                  {"a = [1 22 # c\n]", "22"},
                  {"a = {b = 1 c = 2 }", "c = 2"},
                  {"a = x y # c", "x y"},
                  {"a = [ x y , 1]", "x y"},
                  {"a = { b = x y }", "x y"},
                  {"a =  # c", ""},
                  {"a = {b =}", ""}});
}

TEST_CASE("mistakes are told in the order of their places, not of their finding") {
    check({{"a = [\n  x\n", "1:5: error: the bracket that begins here is not closed\n"
                            "    hint: put ] at its end\n"
                            "2:3: error: \"x\" is not a value of TOML\n"
                            "    hint: text stands in double quotes: \"x\"\n"},
           {"a = [{b = [\nx, # c\n2026-02-30,\n",
            "1:11: error: the bracket that begins here is not closed\n"
            "    hint: put ] at its end\n"
            "2:1: error: \"x\" is not a value of TOML\n"
            "    hint: text stands in double quotes: \"x\"\n"
            "3:1: error: there is no 2026-02-30 in the calendar: this month has the days 01 to "
            "28\n"}});
}

} // namespace syntax_test
