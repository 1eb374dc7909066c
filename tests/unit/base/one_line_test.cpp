#include "base/one_line.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip;

TEST_CASE("a text that can be printed in one line is taken without the space around it") {
    const std::pair<const char*, const char*> cases[] = {{"plum", "plum"},
                                                         {"  plum\t", "plum"},
                                                         {"\u00A0plum\u2009", "plum"},
                                                         {"\u200Bplum", "plum"},
                                                         {"crème brûlée", "crème brûlée"},
                                                         {"a\u200Db", "a\u200Db"}};
    for (const auto& [text, line] : cases) {
        CAPTURE(text);
        CHECK(one_line(text, 12).value_or("?") == line);
    }
}

TEST_CASE("a text that cannot be printed in one line is refused where it goes wrong") {
    struct Case {
        std::string text;
        std::size_t offset;
        const char* message;
    };
    const Case cases[] = {
        {"", 0, "is empty"},
        {" \t\u3000", 0, "is empty"},
        {"\u200B\uFEFF\u00AD", 0, "is empty"},
        {"plum\npot", 4, "must be one line: here is a line break"},
        {"plum\u2028pot", 4, "must be one line: here is a line break"},
        {"é\x07", 2, "holds the control character U+0007, which cannot be printed"},
        {"  a\tb", 3, "holds the control character U+0009, which cannot be printed"},
        {std::string{"a\0b", 3}, 1, "holds the control character U+0000, which cannot be printed"},
        {"a\u0085b", 1, "must be one line: here is a line break"},
        {"ab\u202Ec", 2, "holds U+202E, which turns the direction of writing round"},
        {"\u2066ab", 0, "holds U+2066, which turns the direction of writing round"},
        {"a\xFF", 1, "is not UTF-8"},
        {"  éééééé", 2, "is 6 characters long, at most 5 are taken"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto line = one_line(c.text, 5);
        const auto longer = one_line(c.text, 12);
        const auto& wrong = longer ? line : longer;
        REQUIRE_FALSE(wrong.ok());
        CHECK(wrong.fault().offset == c.offset);
        CHECK(wrong.fault().message == c.message);
    }
}
