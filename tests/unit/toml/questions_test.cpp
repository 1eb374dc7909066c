#include "base/diagnostic.h"
#include "toml/document.h"
#include "toml/file_table.h"
#include "toml/reader.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <functional>
#include <string>

using namespace thawslip;
using namespace thawslip::literals;
using toml::Table;

namespace {

/// What is told when `ask` reads the root of `text`, word for word.
std::string told(const std::string& text, const std::function<void(Table&)>& ask) {
    Diagnostics faults;
    const auto document = toml::parse(text, "x.toml", faults);
    REQUIRE(faults.empty());
    toml::Reader reader{document, faults};
    auto root = reader.root();
    ask(root);
    reader.finish();
    std::string all;
    for (const auto& fault : faults) {
        all += to_text(fault);
    }
    return all;
}

const std::array<toml::Word, 3> vessels = {{{"pot", {"saucepan"}}, {"oven"}, {"slow cooker"}}};

} // namespace

TEST_CASE("each question is answered by a value of its kind") {
    const auto faults =
        told(R"(s = "text"
l = "  one line  "
i = 7
r = 2.5
w = 3
b = true
d = 2026-10-17
len = "1 1/2 in"
word = "Slow Cooker"
list = ["a", "b"]
one = "a"
reals = [1, 2.5]
t = { x = 1 }
[[ts]]
[[ts]]
)",
             [](Table& t) {
                 CHECK(t.string("s")->value == "text");
                 CHECK(t.line("l", 20) == "one line");
                 CHECK(t.integer("i", {1, 10}) == 7);
                 CHECK(t.real("r", {0, 10}) == 2.5);
                 CHECK(t.real("w", {0, 10}) == 3.0);
                 CHECK(t.boolean("b") == true);
                 CHECK(t.date("d")->year() == std::chrono::year{2026});
                 CHECK(t.length("len", {1_mm, 50_mm})->in_millimetres() == doctest::Approx(38.1));
                 CHECK(t.word("word", "a vessel", vessels) == 2);
                 CHECK(t.lines("list", 5, 10).size() == 2);
                 CHECK(t.string_or_strings("one", 5).size() == 1);
                 CHECK(t.string_or_strings("list", 5).at(1).key == KeyPath{"list[2]"});
                 CHECK(t.reals("reals", 5, {0, 10}) == std::vector<double>{1.0, 2.5});
                 CHECK(t.table("t")->integer("x", {0, 1}) == 1);
                 CHECK(t.tables("ts", 5).size() == 2);
                 t.refuse_unknown();
             });
    CHECK(faults.empty());
}

TEST_CASE("what is absent is no answer and no mistake") {
    const auto faults = told("", [](Table& t) {
        CHECK_FALSE(t.string("a"));
        CHECK_FALSE(t.line("a", 9));
        CHECK_FALSE(t.integer("a", {0, 1}));
        CHECK_FALSE(t.real("a", {0, 1}));
        CHECK_FALSE(t.boolean("a"));
        CHECK_FALSE(t.date("a"));
        CHECK_FALSE(t.length("a", {0_mm, 1_mm}));
        CHECK_FALSE(t.word("a", "a vessel", vessels));
        CHECK_FALSE(t.table("a"));
        CHECK(t.strings("a", 9).empty());
        CHECK(t.string_or_strings("a", 9).empty());
        CHECK(t.lines("a", 9, 9).empty());
        CHECK(t.reals("a", 9, {0, 1}).empty());
        CHECK(t.tables("a", 9).empty());
    });
    CHECK(faults.empty());
}

TEST_CASE("a wrong type is told with what was found and expected") {
    struct Case {
        const char* text;
        std::function<void(Table&)> ask;
        const char* told;
    };
    const Case cases[] = {
        {"a = 7", [](Table& t) { t.string("a"); },
         "x.toml:1:5: error: a must be text in double quotes, not the whole number 7\n"},
        {"a = 7",
         [](Table& t) {
             t.string({"a", "\"x\""});
         },
         "x.toml:1:5: error: a must be text in double quotes, not the whole number 7\n"
         "    hint: write, for example, a = \"x\"\n"},
        {"a = \"7\"",
         [](Table& t) {
             t.integer("a", {0, 9});
         },
         "x.toml:1:5: error: a must be a whole number, not the text \"7\"\n"
         "    hint: write it without quotes: a = 7\n"},
        {"a = 7.5",
         [](Table& t) {
             t.integer("a", {0, 9});
         },
         "x.toml:1:5: error: a must be a whole number, not the number 7.5\n"},
        {"a = true",
         [](Table& t) {
             t.real("a", {0, 9});
         },
         "x.toml:1:5: error: a must be a number, not true\n"},
        {"a = \"2.5\"",
         [](Table& t) {
             t.real("a", {0, 9});
         },
         "x.toml:1:5: error: a must be a number, not the text \"2.5\"\n"
         "    hint: write it without quotes: a = 2.5\n"},
        {"a = \"true\"", [](Table& t) { t.boolean("a"); },
         "x.toml:1:5: error: a must be true or false, not the text \"true\"\n"
         "    hint: write it without quotes: a = true\n"},
        {"a = \"2026-10-17\"", [](Table& t) { t.date("a"); },
         "x.toml:1:5: error: a must be a date, not the text \"2026-10-17\"\n"
         "    hint: write it without quotes: a = 2026-10-17\n"},
        {"a = \"tomorrow\"", [](Table& t) { t.date("a"); },
         "x.toml:1:5: error: a must be a date, not the text \"tomorrow\"\n"
         "    hint: write, for example, a = 2026-10-17\n"},
        {"a = 10:30:00", [](Table& t) { t.date("a"); },
         "x.toml:1:5: error: a must be a date, not a time of day\n"
         "    hint: write, for example, a = 2026-10-17\n"},
        {"a = \"x\"", [](Table& t) { t.strings("a", 9); },
         "x.toml:1:5: error: a must be a list in brackets, not the text \"x\"\n"
         "    hint: write a = [\"x\"]\n"},
        {"a = 7", [](Table& t) { t.string_or_strings("a", 9); },
         "x.toml:1:5: error: a must be text in double quotes or a list of them, not the whole "
         "number 7\n"},
        {"a = [\"x\", []]", [](Table& t) { t.strings("a", 9); },
         "x.toml:1:11: error: a[2] must be text in double quotes, not an empty list\n"},
        {"a = [1, \"x\"]",
         [](Table& t) {
             t.reals("a", 9, {0, 9});
         },
         "x.toml:1:9: error: a[2] must be a number, not the text \"x\"\n"},
        {"a = 7", [](Table& t) { t.table("a"); },
         "x.toml:1:5: error: a must be a table, not the whole number 7\n"
         "    hint: write [a] once\n"},
        {"[a]", [](Table& t) { t.tables("a", 9); },
         "x.toml:1:1: error: [a] must be written [[a]]: there may be several\n"},
        {"[[a]]", [](Table& t) { t.table("a"); },
         "x.toml:1:1: error: a must be a table, not a list\n"
         "    hint: write [a] once\n"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        CHECK(told(c.text, c.ask) == c.told);
    }
}

TEST_CASE("a value out of its range is told with the range") {
    struct Case {
        const char* text;
        std::function<void(Table&)> ask;
        const char* told;
    };
    const Case cases[] = {
        {"a = 0",
         [](Table& t) {
             t.integer("a", {1, 9});
         },
         "x.toml:1:5: error: a must be from 1 to 9, not 0\n"},
        {"a = 9223372036854775807",
         [](Table& t) {
             t.integer("a", {1, 9});
         },
         "x.toml:1:5: error: a must be from 1 to 9, not 9223372036854775807\n"},
        {"a = nan",
         [](Table& t) {
             t.real("a", {0.5, 9});
         },
         "x.toml:1:5: error: a must be from 0.5 to 9, not nan\n"},
        {"a = -inf",
         [](Table& t) {
             t.real("a", {0, 9});
         },
         "x.toml:1:5: error: a must be from 0 to 9, not -inf\n"},
        {"a = [1, 10]",
         [](Table& t) {
             t.reals("a", 9, {0, 9});
         },
         "x.toml:1:9: error: a[2] must be from 0 to 9, not 10\n"},
        {"a = \"2 in\"",
         [](Table& t) {
             t.length("a", {1_mm, 50_mm});
         },
         "x.toml:1:5: error: a must be from 1 mm to 50 mm, not \"2 in\"\n"},
        {"a = \"2 ells\"",
         [](Table& t) {
             t.length("a", {1_mm, 50_mm});
         },
         "x.toml:1:8: error: a: \"ells\" is no unit of length: expected mm, cm, in or pt\n"},
        {"a = [\"x\", \"y\", \"z\"]", [](Table& t) { t.strings("a", 2); },
         "x.toml:1:5: error: a has 3 entries, at most 2 are taken\n"},
        {"a = \"    \"", [](Table& t) { t.line("a", 9); }, "x.toml:1:6: error: a is empty\n"},
        {"a = \"ab cd\"", [](Table& t) { t.line("a", 4); },
         "x.toml:1:6: error: a is 5 characters long, at most 4 are taken\n"},
        {"a = [\"x\", \"\"]", [](Table& t) { t.lines("a", 9, 4); },
         "x.toml:1:12: error: a[2] is empty\n"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        CHECK(told(c.text, c.ask) == c.told);
    }
}

TEST_CASE("a word that is not of the set is told with the nearest, by any of its spellings") {
    struct Case {
        const char* written;
        const char* hint;
    };
    const Case cases[] = {{"ofen", "    hint: did you mean \"oven\"?\n"},
                          {"saucepan", "    hint: did you mean \"pot\"?\n"},
                          {"suacepan", "    hint: did you mean \"pot\"?\n"},
                          {"kiln", ""}};
    for (const auto& c : cases) {
        CAPTURE(c.written);
        CHECK(told("a = \"" + std::string{c.written} + "\"",
                   [](Table& t) { t.word("a", "a vessel", vessels); }) ==
              "x.toml:1:5: error: \"" + std::string{c.written} +
                  "\" is not a vessel: expected \"pot\", \"oven\" or \"slow cooker\"\n" + c.hint);
    }
}

TEST_CASE("what is required and missing is told at its table") {
    CHECK(told("[[a]]\n[a.b]\n",
               [](Table& t) {
                   t.require("top");
                   auto a = t.tables("a", 9);
                   a.at(0).table("b")->require({"c", "\"x\""});
               }) == "x.toml:1:1: error: \"top\" is missing at the top of the file\n"
                     "x.toml:2:1: error: \"c\" is missing in [a.b]\n"
                     "    hint: write, for example, c = \"x\"\n");
}

TEST_CASE("a key that nobody asked for is told with the nearest that was, in file order") {
    CHECK(told("zwei = 1\n\"ab\\u0007\" = 2\nsevrings = 3\n[x]\n",
               [](Table& t) {
                   t.integer("servings", {1, 9});
                   t.integer("bags", {1, 9});
                   t.refuse_unknown();
               }) == "x.toml:1:1: error: unknown key \"zwei\" at the top of the file\n"
                     "    hint: keys known here: servings, bags\n"
                     "x.toml:2:1: error: unknown key \"ab\uFFFD\" at the top of the file\n"
                     "    hint: keys known here: servings, bags\n"
                     "x.toml:3:1: error: unknown key \"sevrings\" at the top of the file\n"
                     "    hint: did you mean \"servings\"?\n"
                     "x.toml:4:2: error: unknown key \"x\" at the top of the file\n"
                     "    hint: keys known here: servings, bags\n");
}

TEST_CASE("more tables than are taken are told, and the first are read") {
    CHECK(told("[[a]]\n[[a]]\n[[a]]\n", [](Table& t) { CHECK(t.tables("a", 2).size() == 2); }) ==
          "x.toml:1:1: error: a has 3 entries, at most 2 are taken\n");
}

TEST_CASE("a value that could not be read is absent, and nothing more is said about it") {
    Diagnostics faults;
    const auto document = toml::parse("a = x\n", "x.toml", faults);
    REQUIRE(faults.size() == 1);
    toml::Reader reader{document, faults};
    auto root = reader.root();
    root.require("a");
    CHECK(root.has("a"));
    CHECK_FALSE(root.string("a"));
    CHECK_FALSE(root.integer("a", {0, 9}));
    CHECK_FALSE(root.table("a"));
    CHECK(root.strings("a", 9).empty());
    CHECK(root.string_or_strings("a", 9).empty());
    CHECK(root.tables("a", 9).empty());
    root.refuse_unknown();
    CHECK(faults.size() == 1);
}

TEST_CASE("the keys that were asked for are known afterwards, without positions") {
    Diagnostics faults;
    const auto document = toml::parse("[[a]]\n[[a]]\n", "x.toml", faults);
    std::set<std::string> asked;
    toml::Reader reader{document, faults, &asked};
    auto root = reader.root();
    for (auto& table : root.tables("a", 9)) {
        table.string("b");
    }
    CHECK(asked == std::set<std::string>{"a", "a[].b"});
}

TEST_CASE("what stands below a key in capitals is read, and the key is refused all the same") {
    Diagnostics faults;
    const auto document = toml::parse("[Day]\nMade = 7\nmade = 8\n", "x.toml", faults);
    toml::Reader reader{document, faults};
    auto root = reader.root();
    auto day = root.table("day");
    REQUIRE(day);
    CHECK(day->integer("made", {0, 9}) == 8); // the key as it should be comes first
    CHECK(faults.empty());
    day->refuse_unknown();
    root.refuse_unknown();
    REQUIRE(faults.size() == 2);
    CHECK(faults[0].message == "unknown key \"Made\" in [day]");
    CHECK(faults[0].hints == std::vector<std::string>{"did you mean \"made\"?"});
    CHECK(faults[1].message == "unknown key \"Day\" at the top of the file");
}

TEST_CASE("a value at either end of its range is taken, and the next beyond is not") {
    const auto integer = [](const std::string& written) {
        return told("a = " + written, [](Table& t) {
            if (const auto number = t.integer("a", {1, 9})) {
                CHECK((*number == 1 || *number == 9));
            }
        });
    };
    CHECK(integer("1").empty());
    CHECK(integer("9").empty());
    CHECK(integer("0") == "x.toml:1:5: error: a must be from 1 to 9, not 0\n");
    CHECK(integer("10") == "x.toml:1:5: error: a must be from 1 to 9, not 10\n");
    const auto real = [](const std::string& written) {
        return told("a = " + written, [](Table& t) { t.real("a", {0.5, 2}); });
    };
    CHECK(real("0.5").empty());
    CHECK(real("2").empty());
    CHECK(real("0.49") == "x.toml:1:5: error: a must be from 0.5 to 2, not 0.49\n");
    CHECK(real("2.01") == "x.toml:1:5: error: a must be from 0.5 to 2, not 2.01\n");
    const auto length = [](const std::string& written) {
        return told("a = \"" + written + "\"", [](Table& t) { t.length("a", {1_mm, 50_mm}); });
    };
    CHECK(length("1 mm").empty());
    CHECK(length("50 mm").empty());
    CHECK(length("0.9 mm") == "x.toml:1:5: error: a must be from 1 mm to 50 mm, not \"0.9 mm\"\n");
    CHECK(length("51 mm") == "x.toml:1:5: error: a must be from 1 mm to 50 mm, not \"51 mm\"\n");
    CHECK(
        told("a = [\"x\", \"y\"]", [](Table& t) { CHECK(t.strings("a", 2).size() == 2); }).empty());
    CHECK(told("a = [1, 2]", [](Table& t) { CHECK(t.reals("a", 2, {1, 2}).size() == 2); }).empty());
    CHECK(told("a = [1, 2]", [](Table& t) {
              CHECK(t.reals("a", 1, {1, 2}).empty());
          }) == "x.toml:1:5: error: a has 2 entries, at most 1 are taken\n");
    CHECK(told("[[a]]\n[[a]]", [](Table& t) { CHECK(t.tables("a", 2).size() == 2); }).empty());
    CHECK(told("a = \"ab cd\"", [](Table& t) { CHECK(t.line("a", 5) == "ab cd"); }).empty());
}

TEST_CASE(
    "a word is taken in any letter case and with blanks around it, and stands for its place") {
    CHECK(told("a = \"\\tOVEN \"", [](Table& t) {
              CHECK(t.word("a", "a vessel", vessels) == 1);
          }).empty());
    CHECK(told("a = [\"slow cooker\", \"kiln\", \"oven\"]",
               [](Table& t) {
                   CHECK(t.words("a", 3, "a vessel", vessels) == std::vector<std::size_t>{2, 0, 1});
               }) == "x.toml:1:21: error: \"kiln\" is not a vessel: expected \"pot\", \"oven\" or "
                     "\"slow cooker\"\n");
    CHECK(told("a = [\"pot\", \"pot\"]", [](Table& t) {
              CHECK(t.words("a", 1, "a vessel", vessels).empty());
          }) == "x.toml:1:5: error: a has 2 entries, at most 1 are taken\n");
}

TEST_CASE("one word or several are taken, each with where it stands, and an empty list is told") {
    const toml::Key key{"a", "\"pot\""};
    const auto ask = [&key](const std::string& text, const std::vector<std::size_t>& wanted) {
        return told(text, [&](Table& t) {
            const auto found = t.one_or_several(key, 3, "a vessel", vessels);
            REQUIRE(found.size() == wanted.size());
            for (std::size_t i = 0; i < found.size(); ++i) {
                CHECK(found[i].position == wanted[i]);
            }
            t.refuse_unknown();
        });
    };
    CHECK(ask("", {}).empty());
    CHECK(ask("a = \"oven\"", {1}).empty());
    CHECK(ask("a = [\"oven\", \"pot\"]", {1, 0}).empty());
    CHECK(ask("a = []", {}) == "x.toml:1:5: error: a is an empty list\n"
                               "    hint: write, for example, a = \"pot\"\n");
    CHECK(ask("a = [\"kiln\", \"pot\"]", {0}) ==
          "x.toml:1:6: error: \"kiln\" is not a vessel: expected \"pot\", \"oven\" or \"slow "
          "cooker\"\n");
    CHECK(ask("a = 7", {}) == "x.toml:1:5: error: a must be text in double quotes or a list of "
                              "them, not the whole number 7\n    hint: write, for example, a = "
                              "\"pot\"\n");
    CHECK(ask("a = [1]", {}) ==
          "x.toml:1:6: error: a[1] must be text in double quotes, not the whole number 1\n");
    CHECK(ask("a = [\"pot\", \"pot\", \"pot\", \"pot\"]", {}) ==
          "x.toml:1:5: error: a has 4 entries, at most 3 are taken\n");
    told("a = [\"oven\", \"kiln\", \"pot\"]", [&](Table& t) {
        const auto found = t.one_or_several(key, 3, "a vessel", vessels);
        CHECK(found.back().key == KeyPath{"a[3]"});
    });
}

TEST_CASE("asking whether a key is there does not tick it off, and refusing an old one does") {
    CHECK(told("a = \"x\"\nb = 1\n",
               [](Table& t) {
                   CHECK(t.has("a"));
                   CHECK_FALSE(t.has("c"));
                   REQUIRE(t.text_at("a") != nullptr);
                   CHECK(*t.text_at("a") == "x");
                   CHECK(t.text_at("b") == nullptr);
                   CHECK(t.text_at("c") == nullptr);
                   CHECK(t.path_of("a") == KeyPath{"a"});
                   t.refuse_unknown();
               }) == "x.toml:1:1: error: unknown key \"a\" at the top of the file\n"
                     "    hint: no key is known here\n"
                     "x.toml:2:1: error: unknown key \"b\" at the top of the file\n"
                     "    hint: no key is known here\n");
    CHECK(told("old = 1\n",
               [](Table& t) {
                   t.refuse_moved("old", "stock, below [labels]");
                   t.refuse_moved("older", "nothing");
                   t.refuse_unknown();
               }) == "x.toml:1:7: error: old is written otherwise now\n"
                     "    hint: write it as stock, below [labels]\n");
}

TEST_CASE("what is no table where tables belong is told, and the others are read") {
    CHECK(told("a = [1, {x = 2}, []]",
               [](Table& t) {
                   auto tables = t.tables("a", 9);
                   REQUIRE(tables.size() == 1);
                   CHECK(tables[0].integer("x", {0, 9}) == 2);
                   CHECK(tables[0].path() == KeyPath{"a[2]"});
               }) == "x.toml:1:6: error: a[1] must be a table [[a]], not the whole number 1\n"
                     "x.toml:1:18: error: a[3] must be a table [[a]], not an empty list\n");
    CHECK(told("a = 1", [](Table& t) { CHECK(t.tables("a", 9).empty()); }) ==
          "x.toml:1:5: error: a must be tables [[a]], not the whole number 1\n");
    CHECK(told("a = [1]", [](Table& t) { CHECK_FALSE(t.table("a")); }) ==
          "x.toml:1:5: error: a must be a table, not a list\n    hint: write [a] once\n");
    CHECK(told("a = []", [](Table& t) { CHECK_FALSE(t.table("a")); }) ==
          "x.toml:1:5: error: a must be a table, not an empty list\n    hint: write [a] once\n");
    CHECK(told("[b]\na = 1",
               [](Table& t) {
                   auto b = *t.table("b");
                   CHECK_FALSE(b.table("a"));
                   CHECK(b.tables("a", 1).empty());
               }) == "x.toml:2:5: error: a must be a table, not the whole number 1\n"
                     "    hint: write [b.a] once\n"
                     "x.toml:2:5: error: a must be tables [[b.a]], not the whole number 1\n");
}

TEST_CASE("a fault is told with where, how grave and by what key, up to the hundredth error") {
    Diagnostics faults;
    const auto document = toml::parse("[t]\na = \"x y\"\n", "x.toml", faults);
    toml::Reader reader{document, faults};
    reader.caution(KeyPath{"t.a"}, "careful", {"so"});
    reader.error_inside(KeyPath{"t.a"}, 2, "inside", {"in"});
    reader.error_at({0, 3}, KeyPath{"t"}, "at", {"there"});
    reader.error(KeyPath{"t"}, "table", {"this"});
    CHECK(reader.errors() == 3);
    REQUIRE(faults.size() == 4);
    const Diagnostic wanted[] = {
        {Severity::Caution, {"x.toml", 2, 5, 5}, KeyPath{"t.a"}, "careful", {"so"}},
        {Severity::Error, {"x.toml", 2, 8, 1}, KeyPath{"t.a"}, "inside", {"in"}},
        {Severity::Error, {"x.toml", 1, 1, 3}, KeyPath{"t"}, "at", {"there"}},
        {Severity::Error, {"x.toml", 1, 1, 3}, KeyPath{"t"}, "table", {"this"}}};
    for (std::size_t i = 0; i < faults.size(); ++i) {
        CAPTURE(i);
        CHECK(faults[i].severity == wanted[i].severity);
        CHECK(faults[i].where == wanted[i].where);
        CHECK(faults[i].key == wanted[i].key);
        CHECK(faults[i].message == wanted[i].message);
        CHECK(faults[i].hints == wanted[i].hints);
    }
    while (reader.errors() < toml::Reader::most_errors) {
        CHECK_FALSE(reader.is_full());
        reader.error(KeyPath{"t"}, "more");
    }
    CHECK(reader.is_full());
    CHECK(faults.size() == 101); // with the caution
    reader.caution(KeyPath{"t"}, "too late");
    reader.finish();
    CHECK(faults.size() == 101);
    reader.error(KeyPath{"t"}, "one more");
    reader.finish();
    REQUIRE(faults.size() == 102);
    CHECK(to_text(faults.back()) == "x.toml: note: 1 more mistakes are not shown\n");
    CHECK(faults.back().where == SourceSpan{"x.toml", 0, 0, 0}); // of the file, not of a line
}

TEST_CASE("keys are noted by their tables, whatever positions those have") {
    Diagnostics faults;
    const auto document = toml::parse("[[a]]\n[[a]]\n[[a.b]]\n[a.b.c]\n", "x.toml", faults);
    std::set<std::string> asked;
    toml::Reader reader{document, faults, &asked};
    auto root = reader.root();
    root.has("nothing");
    auto a = root.tables("a", 9).at(1);
    auto b = a.tables("b", 9).at(0);
    b.table("c")->require("d");
    CHECK(asked == std::set<std::string>{"a", "a[].b", "a[].b[].c", "a[].b[].c.d"});
}
