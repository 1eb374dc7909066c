// The first letter of a sentence against ICU's simple upper-case mapping (The Unicode Standard,
// UnicodeData.txt, field 12).

#include "wording/typography.h"

#include <doctest/doctest.h>
#include <string>
#include <unicode/uchar.h>
#include <unicode/unistr.h>

using thawslip::wording::capitalised;

namespace {

std::string utf8(UChar32 code_point) {
    std::string bytes;
    icu::UnicodeString{code_point}.toUTF8String(bytes);
    return bytes;
}

struct Block {
    UChar32 first, last;
};

} // namespace

TEST_CASE(
    "a first letter of the scripts that are set is made a capital, and nothing else is changed") {
    // Basic Latin, Latin-1, Greek and Cyrillic without their marks and rare letters.
    const Block blocks[] = {{0x21, 0x7E}, {0xA1, 0xFE}, {0x3B1, 0x3C9}, {0x410, 0x44F}};
    for (const auto& block : blocks) {
        for (UChar32 letter = block.first; letter <= block.last; ++letter) {
            CAPTURE(letter);
            // Neither a sign that has a capital elsewhere nor a letter that ends words begins one.
            const bool stays = letter == 0xB5 || letter == 0x3C2;
            const auto first = utf8(stays ? letter : u_toupper(letter));
            CHECK(capitalised(utf8(letter)) == first);
            CHECK(capitalised(utf8(letter) + "rest, ça") == first + "rest, ça");
        }
    }
    CHECK(capitalised("").empty());
    CHECK(capitalised("ÿ x") == "ÿ x");
}
