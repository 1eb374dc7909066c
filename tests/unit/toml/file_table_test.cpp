#include "toml/file_table.h"

#include <doctest/doctest.h>
#include <limits>
#include <string>

using namespace thawslip;
using namespace thawslip::literals;
using toml::Table;

namespace {

/// Reads a text and keeps what was told.
struct Read {
    explicit Read(const std::string& text)
        : document{toml::parse(text, "d.toml", faults)}, reader{document, faults} {}

    std::string told() {
        sort_by_place(faults);
        std::string all;
        for (const auto& fault : faults) {
            all += to_text(fault, document.text());
        }
        return all;
    }

    Diagnostics faults;
    toml::Document document;
    toml::Reader reader;
};

} // namespace

TEST_CASE("a value of another type is told with what was found and expected") {
    Read read{"bags = \"3\"\nmade = \"2026-10-17\"\ndish = 7\nsteps = \"Stir.\"\nwide = true\n"
              "thaw = [1]\nday = {}\nlong = 12\n"};
    auto root = read.reader.root();
    CHECK_FALSE(root.integer("bags", {1, 9}));
    CHECK_FALSE(root.date("made"));
    CHECK_FALSE(root.string({"dish", "\"Bean and barley pot\""}));
    CHECK(root.strings("steps", 9).empty());
    CHECK_FALSE(root.real("wide", {0, 1}));
    CHECK_FALSE(root.table("thaw"));
    CHECK_FALSE(root.boolean("day"));
    CHECK_FALSE(root.length({"long", "\"12 mm\""}, {0_mm, 90_mm}));
    root.refuse_unknown();
    CHECK(read.told() == "d.toml:1:8: error: bags must be a whole number, not the text \"3\"\n"
                         "    bags = \"3\"\n"
                         "           ^~~\n"
                         "    hint: write it without quotes: bags = 3\n"
                         "d.toml:2:8: error: made must be a date, not the text \"2026-10-17\"\n"
                         "    made = \"2026-10-17\"\n"
                         "           ^~~~~~~~~~~~\n"
                         "    hint: write it without quotes: made = 2026-10-17\n"
                         "d.toml:3:8: error: dish must be text in double quotes, not the whole "
                         "number 7\n"
                         "    dish = 7\n"
                         "           ^\n"
                         "    hint: write, for example, dish = \"Bean and barley pot\"\n"
                         "d.toml:4:9: error: steps must be a list in brackets, not the text "
                         "\"Stir.\"\n"
                         "    steps = \"Stir.\"\n"
                         "            ^~~~~~~\n"
                         "    hint: write steps = [\"Stir.\"]\n"
                         "d.toml:5:8: error: wide must be a number, not true\n"
                         "    wide = true\n"
                         "           ^~~~\n"
                         "d.toml:6:8: error: thaw must be a table, not a list\n"
                         "    thaw = [1]\n"
                         "           ^~~\n"
                         "    hint: write [thaw] once\n"
                         "d.toml:7:7: error: day must be true or false, not a table\n"
                         "    day = {}\n"
                         "          ^~\n"
                         "d.toml:8:8: error: long must be text in double quotes, not the whole "
                         "number 12\n"
                         "    long = 12\n"
                         "           ^~\n"
                         "    hint: write, for example, long = \"12 mm\"\n");
}

TEST_CASE("a key that nobody asked for is told with the nearest of those asked for") {
    Read read{"dish = \"a\"\nsevings = 6\nzzz = 1\n\"\\u001b[31m\" = 2\n"};
    auto root = read.reader.root();
    root.string("dish");
    root.integer("servings", {1, 9});
    root.refuse_unknown();
    CHECK(read.told() == "d.toml:2:1: error: unknown key \"sevings\" at the top of the file\n"
                         "    sevings = 6\n"
                         "    ^~~~~~~\n"
                         "    hint: did you mean \"servings\"?\n"
                         "d.toml:3:1: error: unknown key \"zzz\" at the top of the file\n"
                         "    zzz = 1\n"
                         "    ^~~\n"
                         "    hint: keys known here: dish, servings\n"
                         "d.toml:4:1: error: unknown key \"\uFFFD[31m\" at the top of the file\n"
                         "    \"\\u001b[31m\" = 2\n"
                         "    ^~~~~~~~~~~~\n"
                         "    hint: keys known here: dish, servings\n");
}

TEST_CASE("a table and a list of tables taken for each other are told, and read all the same") {
    Read read{"[package]\ndish = \"a\"\n[[thaw]]\nmethod = \"b\"\n"};
    auto root = read.reader.root();
    auto packages = root.tables("package", 9);
    REQUIRE(packages.size() == 1);
    CHECK(packages[0].string("dish")->value == "a");
    auto thaw = root.table("thaw");
    REQUIRE(thaw);
    CHECK(thaw->string("method")->value == "b");
    CHECK(read.told() ==
          "d.toml:1:1: error: [package] must be written [[package]]: there may be several\n"
          "    [package]\n"
          "    ^~~~~~~~~\n"
          "d.toml:3:1: error: thaw must be a table, not a list\n"
          "    [[thaw]]\n"
          "    ^~~~~~~~\n"
          "    hint: write [thaw] once\n");
}

TEST_CASE("members are listed in the order of the file, not of the alphabet") {
    Read read{"z = 1\n[m]\nb = 1\na = 2\n[c]\n"};
    auto root = read.reader.root();
    CHECK(root.keys() == std::vector<std::string>{"z", "m", "c"});
    CHECK(root.table("m")->keys() == std::vector<std::string>{"b", "a"});
}

TEST_CASE("numbers out of range, not a number and infinity are refused") {
    Read read{"a = nan\nb = inf\nc = 2\nd = [0.5, -inf]\ne = 9223372036854775807\n"};
    auto root = read.reader.root();
    constexpr double huge = std::numeric_limits<double>::max();
    CHECK_FALSE(root.real("a", {-huge, huge}));
    CHECK_FALSE(root.real("b", {-huge, huge}));
    CHECK(root.real("c", {0, 5}) == 2.0);
    CHECK(root.reals("d", 9, {0, 1}) == std::vector<double>{0.5});
    CHECK_FALSE(root.integer("e", {0, 200}));
    CHECK(read.faults.size() == 4);
}

TEST_CASE("a list longer than its limit is refused by its number, unread") {
    Read read{"steps = [\"a\", \"b\", \"c\"]\n[[p]]\n[[p]]\n[[p]]\n"};
    auto root = read.reader.root();
    CHECK(root.strings("steps", 2).empty());
    CHECK(root.tables("p", 2).size() == 2);
    REQUIRE(read.faults.size() == 2);
    CHECK(read.faults[0].message == "steps has 3 entries, at most 2 are taken");
    CHECK(read.faults[1].message == "p has 3 entries, at most 2 are taken");
}

TEST_CASE("after a hundred mistakes the rest is only counted") {
    std::string text;
    for (int i = 0; i < 50'000; ++i) {
        text += "k" + std::to_string(i) + " = 1\n";
    }
    Read read{text};
    read.reader.root().refuse_unknown();
    read.reader.finish();
    REQUIRE(read.faults.size() == toml::Reader::most_errors + 1);
    CHECK(read.faults.back().message == "49900 more mistakes are not shown");
}

TEST_CASE("a hundred mistakes are all shown, and nothing is said of more") {
    std::string text;
    for (std::size_t i = 0; i < toml::Reader::most_errors; ++i) {
        text += "k" + std::to_string(i) + " = 1\n";
    }
    Read read{text};
    read.reader.root().refuse_unknown();
    read.reader.finish();
    REQUIRE(read.faults.size() == toml::Reader::most_errors);
    CHECK(read.faults.back().severity == Severity::Error);
}

TEST_CASE("a fault inside a string is placed at its character where the source shows it") {
    struct Case {
        const char* text;
        std::size_t offset;
        std::uint32_t line, column;
    };
    const Case cases[] = {
        {"w = \"2.2 kg\"", 4, 1, 10},        // the k
        {"w = '2.2 kg'", 4, 1, 10},          // in single quotes
        {"w = \"½ kg\"", 3, 1, 8},           // offsets count bytes, columns characters
        {"w = \"2\\u0020kg\"", 2, 1, 5},     // an escape hides it: the whole string
        {"w = \"\"\"\n2 kg\"\"\"", 2, 1, 5}, // a line break hides it
        {"w = \"2.2 kg\"", 999, 1, 12},      // past the end: at the closing quote
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const Read read{c.text};
        const auto where = read.document.place_inside(KeyPath{"w"}, c.offset);
        CHECK(where.line == c.line);
        CHECK(where.column == c.column);
    }
}

TEST_CASE("a path that the file lacks is placed at the nearest enclosing table") {
    const Read read{"[day]\nmade = 2026-10-17\n\n[[package]]\n[[package]]\n[package.thaw]\n"};
    struct Case {
        const char* path;
        std::uint32_t line;
    };
    const Case cases[] = {{"day.made", 2},
                          {"day.made.x", 2},
                          {"day.x", 1},
                          {"package[2]", 5},
                          {"package[2].x", 5},
                          {"package[2].thaw.x", 6},
                          {"package[3].dish", 4},
                          {"package[0]", 4},
                          {"package[x]", 4},
                          {"package[", 4},
                          {"package[2", 5},
                          {"package[99999999999999999999999]", 4},
                          {"x", 1},
                          {"", 1},
                          {"]..[", 1}};
    for (const auto& c : cases) {
        CAPTURE(c.path);
        const auto where = read.document.place(KeyPath{c.path});
        CHECK(where.file == "d.toml");
        CHECK(where.line == c.line);
    }
}
