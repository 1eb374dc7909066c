#include "toml/document.h"
#include "toml/faults.h"
#include "toml/library.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip;

namespace {

Diagnostics faults_of(const std::string& text) {
    Diagnostics faults;
    toml::parse(text, "x.toml", faults);
    return faults;
}

} // namespace

TEST_CASE("a value that goes on over lines is shown on its first") {
    Diagnostics faults;
    const auto document =
        toml::parse("a = [1,\n  2]\nb = \"\"\"é one\r\ntwo\"\"\"\n", "x.toml", faults);
    REQUIRE(document.well_formed());
    CHECK(document.place(KeyPath{"a"}) == SourceSpan{"x.toml", 1, 5, 3});
    CHECK(document.place(KeyPath{"b"}) == SourceSpan{"x.toml", 3, 5, 8});
}

TEST_CASE("what is no TOML 1.0 is refused at its place") {
    // TOML v1.0.0, toml.io/en/v1.0.0, 2021: each line breaks one of its rules.
    const char* documents[] = {
        "a",
        "a =",
        "= 1",
        "a = 1 b = 2",
        "a = 1\na = 2",
        "[a]\n[a]",
        "a.b = 1\n[a]\nb = 2",
        "[a",
        "[[a]",
        "[]",
        "[a.]",
        "a = [1, 2",
        "a = {x = 1",
        "a = {x = 1,}",
        "a = {x = 1\n}",
        "a = \"open",
        "a = 'open",
        "a = \"\"\"open",
        "a = \"\\q\"",
        "a = \"\\ud800\"",
        "a = \"tab\x01\"",
        "a = 01",
        "a = 1__0",
        "a = _1",
        "a = 1.",
        "a = .5",
        "a = 1e",
        "a = 0x",
        "a = 0xG",
        "a = 0b2",
        "a = +0x1",
        "a = tru",
        "a = True",
        "a = 2026-13-01",
        "a = 2026-02-30",
        "a = 2026-10-17T25:00:00",
        "a = 12:60:00",
        "a = 12:30",
        "a = inff",
        "a = 9223372036854775808",
        "a = [1] [2]",
        "\xEF\xBB",
        "a = \"\xFF\"",
        "a = \"\xED\xA0\x80\"",
    };
    for (const char* document : documents) {
        CAPTURE(document);
        const auto faults = faults_of(document);
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].severity == Severity::Error);
        CHECK(faults[0].where.line >= 1);
        CHECK(faults[0].where.column >= 1);
        CHECK_FALSE(faults[0].message.empty());
    }
}

TEST_CASE("what TOML 1.0 allows is read") {
    const char* documents[] = {"",
                               "# only a remark",
                               "\xEF\xBB\xBF"
                               "a = 1",
                               "a = 1\r\nb = 2\r\n",
                               "a = [1,\n 2, # two\n]",
                               "a = { b = { c = 1 } }",
                               "\"quoted key\" = 1",
                               "a.b.c = 1",
                               "a = '''\nraw'''",
                               "a = 0xDEAD\nb = 0o17\nc = 0b11",
                               "a = inf\nb = -nan",
                               "a = 2028-02-29",
                               "[[a]]\n[[a.b]]\n[[a]]"};
    for (const char* document : documents) {
        CAPTURE(document);
        CHECK(faults_of(document).empty());
    }
}

TEST_CASE("brackets ten thousand deep are refused before they can hurt") {
    for (const auto& text : {"a = " + std::string(10'000, '['), std::string(10'000, '['),
                             [] {
                                 std::string nested = "a = ";
                                 for (int i = 0; i < 10'000; ++i) {
                                     nested += "{a = ";
                                 }
                                 return nested;
                             }(),
                             [] {
                                 std::string dotted = "a";
                                 for (int i = 0; i < 10'000; ++i) {
                                     dotted += ".a";
                                 }
                                 return dotted + " = 1";
                             }()}) {
        const auto faults = faults_of(text);
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].where.line == 1);
    }
}

TEST_CASE("a text over the limit is refused by its size") {
    const auto faults = faults_of("# " + std::string(std::size_t{1} << 20U, 'x'));
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].message ==
          "the file is too large: 1048578 bytes, at most 1048576 bytes are read");
}

TEST_CASE("bytes that are not UTF-8 are found by line and column") {
    const auto faults = faults_of("a = 1\nb = \"é\xFFz\"\n");
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].where.line == 2);
    CHECK(faults[0].where.column == 7);
}

namespace {

/// Every value that has a place of its own in the text: all but tables with a header or of dots.
void collect(const toml::Value& value, std::vector<const toml::Value*>& leaves) {
    if (const auto* table = std::get_if<toml::Members>(&value.content)) {
        for (const auto& each : table->list) {
            collect(each.value, leaves);
        }
    } else if (const auto* list = std::get_if<toml::Array>(&value.content)) {
        for (const auto& each : list->elements) {
            collect(each, leaves);
        }
    } else {
        leaves.push_back(&value);
    }
}

} // namespace

TEST_CASE("another text in a value's place changes that value and nothing else") {
    const std::string text =
        "# é\r\nx = \"plum\" # remark\n[[t]]\ny = [ 1, 'b',\n  { z = 2026-10-17 } ]\n"
        "[t.u]\na.\"b c\" = \"\"\"\nlong\n\"\"\"\nd = 07:30:00\n[[t]]\ne=true#";
    Diagnostics faults;
    const auto document = toml::parse(text, "x.toml", faults);
    REQUIRE(document.well_formed());
    std::vector<const toml::Value*> leaves;
    collect(document.root(), leaves);
    REQUIRE(leaves.size() == 7);
    for (std::size_t i = 0; i < leaves.size(); ++i) {
        auto other = text;
        const auto [begin, end] = leaves[i]->place;
        other.replace(begin, end - begin, "987");
        CAPTURE(other);
        const auto changed = toml::parse(other, "x.toml", faults);
        REQUIRE(changed.well_formed());
        std::vector<const toml::Value*> after;
        collect(changed.root(), after);
        REQUIRE(after.size() == leaves.size());
        for (std::size_t j = 0; j < leaves.size(); ++j) {
            const auto* number = std::get_if<std::int64_t>(&after[j]->content);
            CHECK((number != nullptr && *number == 987) == (i == j));
        }
    }
}

TEST_CASE("keys and headers stand where they are written") {
    const std::string text = "[[pot.lid]] # x\n\"a b\" . c = 1\n";
    Diagnostics faults;
    const auto document = toml::parse(text, "x.toml", faults);
    const auto written = [&text](toml::Stretch place) {
        return text.substr(place.begin, place.end - place.begin);
    };
    const auto& pot = std::get<toml::Members>(document.root().content).list.front();
    CHECK(written(pot.key_place) == "pot");
    CHECK(written(pot.value.place) == "[[pot.lid]]");
    const auto& lids = std::get<toml::Array>(toml::member(pot.value, "lid")->content);
    CHECK(written(lids.elements.front().place) == "[[pot.lid]]");
    const auto& dotted = std::get<toml::Members>(lids.elements.front().content).list.front();
    CHECK(written(dotted.key_place) == "\"a b\"");
    CHECK(written(dotted.value.place) == "\"a b\"");
}

TEST_CASE("names are written as TOML wants them") {
    CHECK(toml::written_key("use_by-2") == "use_by-2");
    CHECK(toml::written_key("use by") == "\"use by\"");
    CHECK(toml::written_key("") == "\"\"");
    CHECK(toml::header_of("day") == "[day]");
    CHECK(toml::header_of("package[2]") == "[[package]]");
    CHECK(toml::header_of("package[2].thaw") == "[package.thaw]");
    CHECK(toml::header_of("package[2].finish[1]") == "[[package.finish]]");
}

TEST_CASE("bytes that no text file has are told with how to save it") {
    const auto told = [](const std::string& text) {
        const auto faults = faults_of(text);
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].where.length == 1);
        const auto& hints = faults[0].hints;
        return std::to_string(faults[0].where.line) + ":" + std::to_string(faults[0].where.column) +
               " " + faults[0].message + (hints.empty() ? "" : ", " + hints[0]);
    };
    const std::string utf16 = ", this looks like UTF-16: save the file as UTF-8";
    const std::string utf8 = ", save the file as UTF-8";
    CHECK(told("\xFF\xFE"
               "a") == "1:1 the byte 0xFF is not UTF-8" + utf16);
    CHECK(told("\xFE\xFF"
               "a") == "1:1 the byte 0xFE is not UTF-8" + utf16);
    CHECK(told("\xFD"
               "a") == "1:1 the byte 0xFD is not UTF-8" + utf8);
    CHECK(told("a\xFF") == "1:2 the byte 0xFF is not UTF-8" + utf8);
    for (std::size_t before = 0; before < 6; ++before) {
        const std::string text = std::string(before, ' ') + std::string(1, '\0') + "a\xFF";
        CHECK(told(text) == "1:" + std::to_string(before + 1) +
                                " the byte 0x00 is not allowed in TOML" +
                                (before < 4 ? utf16 : ""));
    }
    CHECK(told(std::string{"a\xFF\0", 3}) == "1:2 the byte 0xFF is not UTF-8" + utf8);
    const std::string lone = "a carriage return without a line feed, save the file with the line "
                             "ends of Unix or of Windows";
    CHECK(told("a = 1\rb = 2\r") == "1:6 " + lone);
    CHECK(told("a = 1\r\n\r\r\n") == "2:1 " + lone);
    CHECK(told("a = 1\r\nb = 2\r") == "2:6 " + lone);
    CHECK(told("a = '\r'") == "1:6 " + lone);
}

TEST_CASE("a file is read up to its limits of bytes and of depth, and not beyond") {
    const auto message = [](const std::string& text, const toml::Limits& limits) {
        Diagnostics faults;
        const auto document = toml::parse(text, "x.toml", faults, limits);
        CHECK(document.well_formed() == faults.empty());
        CHECK(document.has_values() == faults.empty());
        return faults.empty() ? "" : faults[0].message;
    };
    CHECK(message("a = 1\n", {6, 9}).empty());
    CHECK(message("\xEF\xBB\xBF"
                  "a = 1\n",
                  {6, 9})
              .empty()); // the mark is none of it
    CHECK(message("a = 1\n", {5, 9}) == "the file is too large: 6 bytes, at most 5 bytes are read");
    const std::string too_deep = "nested too deep: at most 2 levels are read";
    const toml::Limits two{99, 2};
    for (const auto* text : {"a = [[1]]", "a = [[1], [2]]", "a = {b = {}}", "a = [{}]", "a.b = 1",
                             "[a.b]\nc.d = 1", "[[a.b]]", "a = [[1], {b.c = 2}]"}) {
        CAPTURE(text);
        CHECK(message(text, two).empty());
    }
    for (const auto* text : {"a = [[[1]]]", "a = {b = {c = {}}}", "a = [[{}]]", "a.b.c = 1",
                             "[a.b.c]", "[[a.b.c]]", "a = {b.c.d = 1}"}) {
        CAPTURE(text);
        CHECK(message(text, two) == too_deep);
    }
}

TEST_CASE("what is too deep is told at the bracket or the dot that is one too many") {
    Diagnostics faults;
    toml::parse("a = [[[1]]]\nb = x\n", "x.toml", faults, {99, 2});
    toml::parse("a.b.c = 1\nb = x\n", "x.toml", faults, {99, 2});
    REQUIRE(faults.size() == 2); // nothing behind it is read
    CHECK(faults[0].where == SourceSpan{"x.toml", 1, 7, 1});
    CHECK(faults[1].where == SourceSpan{"x.toml", 1, 4, 1});
}

TEST_CASE("the library that has the last word says where and why it refuses a text") {
    CHECK_FALSE(toml::library_objection("a = 1\n"));
    const auto objection = toml::library_objection("a = 1\nbb = \n");
    REQUIRE(objection);
    CHECK(objection->line == 2);
    CHECK(objection->column == 6);
    CHECK_FALSE(objection->message.empty());
}

TEST_CASE("a value is called by its kind and what it holds") {
    const auto described = [](const std::string& written) {
        Diagnostics faults;
        const auto document = toml::parse("a = " + written, "x.toml", faults);
        return toml::describe(*toml::member(document.root(), "a"));
    };
    CHECK(described("{}") == "a table");
    CHECK(described("[]") == "an empty list");
    CHECK(described("[1]") == "a list");
    CHECK(described("'six'") == "the text \"six\"");
    CHECK(described("6") == "the whole number 6");
    CHECK(described("6.5") == "the number 6.5");
    CHECK(described("true") == "true");
    CHECK(described("false") == "false");
    CHECK(described("0926-01-07") == "the date 0926-01-07");
    CHECK(described("07:30:00") == "a time of day");
    CHECK(described("2026-10-17 07:30:00") == "a date with a time");
    CHECK(described("x") == "something unreadable");
}

TEST_CASE("a key is bare in messages up to forty letters, in quotes beyond") {
    CHECK(toml::written_key(std::string(40, 'a')) == std::string(40, 'a'));
    CHECK(toml::written_key(std::string(41, 'a')).starts_with("\"aaa"));
    CHECK(toml::written_key("azAZ09_-") == "azAZ09_-");
    CHECK(toml::written_key("a.b") == "\"a.b\"");
}
