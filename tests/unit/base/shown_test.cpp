#include "base/shown.h"

#include <doctest/doctest.h>

using namespace thawslip;

TEST_CASE("what moves a terminal, breaks a line or turns writing round is shown as an escape") {
    const struct {
        const char* text;
        const char* shown;
    } cases[] = {
        {"Quince, 2 kg", "Quince, 2 kg"},
        {"crème brûlée · борщ · カボチャ", "crème brûlée · борщ · カボチャ"},
        {"two\nlines\tof it", "two\nlines\tof it"},
        {"\x1B]0;title\x07", "\\u001b]0;title\\u0007"},
        {"\xC2\x9B"
         "31m",
         "\\u009b31m"}, // C1's control sequence introducer
        {"a\xE2\x80\xA8z", "a\\u2028z"},
        {"a\xE2\x80\xAEz", "a\\u202ez"},
        {"a\xE2\x81\xA7z", "a\\u2067z"},
        {"back\rspace\x08\x7F", "back\\u000dspace\\u0008\\u007f"},
        {"a\xFFz", "a\xEF\xBF\xBDz"},
        {"cut \xE2\x80", "cut \xEF\xBF\xBD\xEF\xBF\xBD"},
    };
    for (const auto& c : cases) {
        CHECK(shown(c.text) == c.shown);
    }
}

TEST_CASE("a line that is shown as it is has no line end and nothing to be escaped") {
    CHECK(is_shown_line("Köttbullar"));
    CHECK(is_shown_line(""));
    CHECK_FALSE(is_shown_line("two\nlines"));
    CHECK_FALSE(is_shown_line("a\ttab"));
    CHECK_FALSE(is_shown_line("\xC2\x85"));
    CHECK_FALSE(is_shown_line("\xE2\x81\xA6"));
}

TEST_CASE("a code point that is cut off at the end of a text is known by its beginning") {
    CHECK(unfinished_utf8("plain") == 0);
    CHECK(unfinished_utf8("é") == 0);
    CHECK(unfinished_utf8("\xC3") == 1);
    CHECK(unfinished_utf8("x\xE2\x80") == 2);
    CHECK(unfinished_utf8("x\xF0\x9F\x8D") == 3);
    CHECK(unfinished_utf8("\x80\x80\x80\x80") == 0);
}
