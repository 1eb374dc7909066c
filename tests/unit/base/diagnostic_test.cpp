#include "base/diagnostic.h"

#include <doctest/doctest.h>

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
