// Against the transform Latin-ASCII of the Unicode CLDR, which ICU carries out by itself.

#include "base/utf8.h"
#include "unicode/ascii.h"

#include <doctest/doctest.h>
#include <memory>
#include <string>
#include <unicode/translit.h>
#include <unicode/uscript.h>

using namespace thawslip;

TEST_CASE("every Latin letter up to U+024F is folded as CLDR's Latin-ASCII does") {
    UErrorCode error = U_ZERO_ERROR;
    const std::unique_ptr<icu::Transliterator> latin_ascii{
        icu::Transliterator::createInstance("Latin-ASCII", UTRANS_FORWARD, error)};
    REQUIRE(U_SUCCESS(error));
    int letters = 0;
    for (char32_t c = 0xC0; c <= 0x24F; ++c) {
        if (uscript_getScript(static_cast<UChar32>(c), &error) != USCRIPT_LATIN) {
            continue;
        }
        icu::UnicodeString text{static_cast<UChar32>(c)};
        latin_ascii->transliterate(text);
        std::string expected;
        text.toUTF8String(expected);
        std::string letter;
        append_utf8(letter, c);
        CAPTURE(letter);
        // A capital of two letters is written as in a word of small ones ("Thorri"), where CLDR
        // shouts; a few letters CLDR leaves as they are.
        const auto folded = unicode::to_ascii(letter + "x");
        const auto shouted = unicode::to_ascii(letter + "X");
        if (static_cast<unsigned char>(expected.front()) < 0x80) {
            CHECK((folded == expected + "x" || shouted == expected + "X"));
            ++letters;
        }
    }
    CHECK(letters > 350);
}
