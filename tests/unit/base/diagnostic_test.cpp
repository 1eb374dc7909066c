#include "base/diagnostic.h"
#include "base/utf8.h"

#include <cstdint>
#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace thawslip;

TEST_CASE("a diagnostic shows its place, the line, a mark and what to do") {
    const std::string source = "[package.thaw]\nmethod = \"frige\"\n";
    const Diagnostic fault{Severity::Error,
                           {"sunday.toml", 2, 10, 7},
                           KeyPath{"package[1].thaw.method"},
                           "\"frige\" is not a thaw method",
                           {"did you mean \"refrigerator\"?"}};
    CHECK(to_text(fault, source) == "sunday.toml:2:10: error: \"frige\" is not a thaw method\n"
                                    "    method = \"frige\"\n"
                                    "             ^~~~~~~\n"
                                    "    hint: did you mean \"refrigerator\"?\n");
}

TEST_CASE("a diagnostic without a place says only what is wrong") {
    CHECK(to_text({Severity::Caution, {}, {}, "no clock", {}}) == "caution: no clock\n");
    CHECK(to_text({Severity::Error, {"day.toml", 0, 0, 0}, {}, "is a directory", {}}) ==
          "day.toml: error: is a directory\n");
    CHECK(to_text({Severity::Error, {"day.toml", 3, 0, 0}, {}, "is too long", {}}) ==
          "day.toml:3: error: is too long\n");
}

TEST_CASE("control characters of a source line never reach the terminal") {
    const Diagnostic fault{Severity::Error, {"x.toml", 1, 1, 1}, {}, "bad", {}};
    const auto text = to_text(fault, "a\x1b[31mred\n");
    CHECK(text.find('\x1b') == std::string::npos);
    CHECK(text.find("a [31mred") != std::string::npos);
}

TEST_CASE("a long line is cut to a window that holds the mark") {
    const std::string source(500, 'x');
    const auto text = to_text({Severity::Error, {"x.toml", 1, 400, 3}, {}, "bad", {}}, source);
    const auto mark = text.find('^');
    REQUIRE(mark != std::string::npos);
    CHECK(text.size() < 300);
}

TEST_CASE("wherever a mark stands in a line of any length, it stands below its character") {
    // Letters of one, two and three bytes, no two equal within a window.
    std::vector<std::string> letters;
    for (int i = 0; i < 300; ++i) {
        const int code_point = i % 3 == 0   ? 0x21 + i / 3 % 90
                               : i % 3 == 1 ? 0x430 + i / 3
                                            : 0x4E00 + i;
        letters.push_back(to_utf8(std::u32string(1, static_cast<char32_t>(code_point))));
    }
    for (const std::size_t length : {1U, 91U, 92U, 93U, 150U, 300U}) {
        std::string source;
        for (std::size_t i = 0; i < length; ++i) {
            source += letters[i];
        }
        for (std::size_t column = 1; column <= length; ++column) {
            const auto text = to_text({Severity::Error,
                                       {"x.toml", 1, static_cast<std::uint32_t>(column), 1},
                                       {},
                                       "bad",
                                       {}},
                                      source);
            const auto line_begin = text.find('\n') + 1;
            const auto line_end = text.find('\n', line_begin);
            const auto mark = text.find('^', line_end) - line_end - 1;
            const auto line = text.substr(line_begin, line_end - line_begin);
            CAPTURE(column);
            CAPTURE(line);
            REQUIRE(count_code_points(line) <= 92 + 4);
            CHECK((length > 92 || count_code_points(line) == length + 4)); // whole, where it can be
            // As many letters before it as blanks before the mark.
            REQUIRE(line.find(letters[column - 1]) != std::string::npos);
            CHECK(count_code_points(line.substr(0, line.find(letters[column - 1]))) == mark);
        }
    }
}

TEST_CASE("diagnostics are sorted by place, and those of one place keep their order") {
    Diagnostics all = {{Severity::Error, {"b", 1, 1, 0}, {}, "third", {}},
                       {Severity::Error, {"a", 9, 2, 0}, {}, "first", {}},
                       {Severity::Error, {"a", 9, 2, 0}, {}, "second", {}}};
    sort_by_place(all);
    CHECK(all[0].message == "first");
    CHECK(all[1].message == "second");
    CHECK(all[2].message == "third");
}

TEST_CASE("a caution alone is no error") {
    CHECK_FALSE(has_errors({{Severity::Caution, {}, {}, "hm", {}}}));
    CHECK(has_errors({{Severity::Caution, {}, {}, "hm", {}}, {Severity::Error, {}, {}, "no", {}}}));
}
