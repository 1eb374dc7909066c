// Against the Unicode Character Database 15.0.0, auxiliary/LineBreakTest.txt and
// auxiliary/GraphemeBreakTest.txt (Unicode Consortium, 2022), as Debian's unicode-data ships them.

#include "conformance/unicode/break_test_file.h"
#include "unicode/boundaries.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

const std::string folder = "/usr/share/unicode/auxiliary/";

// ICU 72 differs from the file on purpose. Its reasons:
const char* const hyphen_before_letter =
    "ICU keeps a hyphen that opens a line or a word with the letter after it (\"-ling\"), which "
    "Unicode took over in version 16 as LB20a";
const char* const plain_numbers =
    "the file tests the regular expression for numbers of UAX #14, 8.2, example 7; ICU follows "
    "the rule itself, LB25, which joins a full stop or comma to any digit after it";
const char* const leading_point =
    "ICU lets a line end before a number that begins with its decimal point (\" .35\")";

const std::map<std::string, const char*> deviations = {
    {"× 002D ÷ 0023 ÷", hyphen_before_letter},
    {"× 002D × 0308 ÷ 0023 ÷", hyphen_before_letter},
    {"× 002D ÷ 00A7 ÷", hyphen_before_letter},
    {"× 002D × 0308 ÷ 00A7 ÷", hyphen_before_letter},
    {"× 002D ÷ 50005 ÷", hyphen_before_letter},
    {"× 002D × 0308 ÷ 50005 ÷", hyphen_before_letter},
    {"× 002D ÷ 0E01 ÷", hyphen_before_letter},
    {"× 002D × 0308 ÷ 0E01 ÷", hyphen_before_letter},
    {"× 002C ÷ 0030 ÷", plain_numbers},
    {"× 002C × 0308 ÷ 0030 ÷", plain_numbers},
    {"× 0061 × 002E ÷ 0032 × 0020 ÷", plain_numbers},
    {"× 0061 × 002E ÷ 0032 × 0020 ÷ 0915 ÷", plain_numbers},
    {"× 0061 × 002E ÷ 0032 × 0020 ÷ 672C ÷", plain_numbers},
    {"× 0061 × 002E ÷ 0032 × 3000 ÷ 672C ÷", plain_numbers},
    {"× 0061 × 002E ÷ 0032 × 3000 ÷ 307E ÷", plain_numbers},
    {"× 0061 × 002E ÷ 0032 × 3000 ÷ 0033 ÷", plain_numbers},
    {"× 0061 × 002E ÷ 0032 × 3000 ÷ 300C ÷", plain_numbers},
    {"× 0041 × 002E ÷ 0031 × 0020 ÷ BABB ÷", plain_numbers},
    {"× BD24 ÷ C5B4 × 002E × 0020 ÷ 0041 × 002E ÷ 0032 × 0020 ÷ BCFC ÷", plain_numbers},
    {"× BD10 ÷ C694 × 002E × 0020 ÷ 0041 × 002E ÷ 0033 × 0020 ÷ BABB ÷", plain_numbers},
    {"× C694 × 002E × 0020 ÷ 0041 × 002E ÷ 0034 × 0020 ÷ BABB ÷", plain_numbers},
    {"× 0065 × 0071 × 0075 × 0061 × 006C × 0073 × 0020 × 002E ÷ 0033 × 0035 × 0020 ÷ 0063 × 0065 "
     "× 006E × 0074 × 0073 ÷",
     leading_point},
};

} // namespace

TEST_CASE("line breaks pass 7,632 of Unicode's 7,654 cases, the others as listed") {
    const auto cases = read_break_file(folder + "LineBreakTest.txt");
    REQUIRE(cases.size() == 7654);
    std::size_t passed = 0;
    for (const auto& c : cases) {
        const bool passes = unicode::line_breaks(c.text) == c.breaks;
        passed += passes ? 1 : 0;
        CAPTURE(c.line);
        CHECK(passes == (deviations.count(c.line) == 0));
    }
    CHECK(passed == 7632);
    CHECK(passed + deviations.size() == cases.size());
}

TEST_CASE("grapheme boundaries pass all 602 of Unicode's cases") {
    const auto cases = read_break_file(folder + "GraphemeBreakTest.txt");
    REQUIRE(cases.size() == 602);
    for (const auto& c : cases) {
        CAPTURE(c.line);
        CHECK(unicode::grapheme_breaks(c.text) == c.breaks);
    }
}
