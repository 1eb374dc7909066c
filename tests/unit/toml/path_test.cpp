// How a key is named in a path and in messages, and where what it names stands.

#include "toml/document.h"
#include "toml/editor.h"
#include "toml/faults.h"

#include <doctest/doctest.h>
#include <string>

namespace path_test {

using namespace thawslip;

namespace {

/// The steps of a path, positions in brackets: `package [2] dish`.
std::string steps(std::string_view path) {
    const auto found = toml::steps_of(path);
    if (!found) {
        return "none";
    }
    std::string all;
    for (const auto& [key, position] : *found) {
        CHECK(key.empty() == (position > 0));
        all +=
            (all.empty() ? "" : " ") + (position > 0 ? "[" + std::to_string(position) + "]" : key);
    }
    return all;
}

toml::Document document_of(const std::string& text) {
    Diagnostics faults;
    auto document = toml::parse(text, "d.toml", faults);
    REQUIRE(faults.empty());
    return document;
}

} // namespace

TEST_CASE("a path is keys with dots between, positions from 1, and keys in quotes") {
    CHECK(steps("day") == "day");
    CHECK(steps("day.made") == "day made");
    CHECK(steps("package[2].thaw.method") == "package [2] thaw method");
    CHECK(steps("a[1][12]") == "a [1] [12]");
    CHECK(steps("\"a.b\"") == "a.b");
    CHECK(steps("x.\"a[1]\".y") == "x a[1] y");
    CHECK(steps("\"c d\"[3]") == "c d [3]");
    for (const auto* path :
         {"",      ".",     "a.",    ".a",     "a..b",   "[1]",
          "[1].a", "a[",    "a[1",   "a[]",    "a[0]",   "a[-1]",
          "a[x]",  "a[1x]", "a[ 1]", "a[1]b",  "a[1].",  "a[99999999999999999999]",
          "\"",    "\"a",   "\"\"",  "a.\"\"", "\"a\"b", "a.\"b"}) {
        CAPTURE(path);
        CHECK(steps(path) == "none");
    }
}

TEST_CASE("a value is found by its key, or else by one that differs by letter case alone") {
    const auto document = document_of("Made = 1\nmade = 2\nMADE = 3\nDish = 4\n");
    const auto number = [&](std::string_view key) {
        const auto* value = toml::member(document.root(), key);
        return value != nullptr ? std::get<std::int64_t>(value->content) : 0;
    };
    CHECK(number("made") == 2);
    CHECK(number("MADE") == 3);
    CHECK(number("mADE") == 1); // the first of those
    CHECK(number("dish") == 4);
    CHECK(number("dis") == 0);
    CHECK(toml::member({std::string{"made"}, {}}, "made") == nullptr);
}

TEST_CASE("a place is line, column and length in characters, within its first line") {
    const auto document = document_of("\"é\" = 'ß'\r\n[[t]]\n\"ü\" = [\n1, 2]\nlast = true");
    CHECK(document.place(KeyPath{"é"}) == SourceSpan{"d.toml", 1, 7, 3});
    CHECK(document.place(KeyPath{"t[1]"}) == SourceSpan{"d.toml", 2, 1, 5});
    CHECK(document.place(KeyPath{"t[1].ü"}) == SourceSpan{"d.toml", 3, 7, 1});
    CHECK(document.place(KeyPath{"t[1].ü[1]"}) == SourceSpan{"d.toml", 4, 1, 1});
    CHECK(document.place(KeyPath{"t[1].ü[2]"}) == SourceSpan{"d.toml", 4, 4, 1});
    CHECK(document.place(KeyPath{"t[1].ü[3]"}) == SourceSpan{"d.toml", 3, 7, 1});
    CHECK(document.place(KeyPath{"t[1].last"}) == SourceSpan{"d.toml", 5, 8, 4});
    CHECK(document.place(KeyPath{"x"}) == SourceSpan{"d.toml", 1, 1, 1}); // nowhere: the beginning
    CHECK(document.span({0, 0}) == SourceSpan{"d.toml", 1, 1, 0});
    CHECK(document.span({11, 20}) == SourceSpan{"d.toml", 1, 10, 0}); // at the line's end
}

} // namespace path_test
