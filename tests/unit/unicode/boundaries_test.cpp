#include "unicode/boundaries.h"
#include "unicode/character.h"
#include "unicode/normalize.h"

#include <cstdint>
#include <doctest/doctest.h>

using namespace thawslip::unicode;

using Offsets = std::vector<std::size_t>;

TEST_CASE("lines may end after spaces and hyphens, and at the end of the text") {
    CHECK(line_breaks("slow-cooker stew") == Offsets{5, 12, 16});
    CHECK(line_breaks("") == Offsets{});
    CHECK(line_breaks("180\u00A0°C") == Offsets{8});
}

TEST_CASE("an accent, a flag and a joined emoji are each one character to a reader") {
    CHECK(grapheme_breaks("e\u0301a") == Offsets{3, 4});
    CHECK(grapheme_breaks("🇫🇷x") == Offsets{8, 9});
    CHECK(grapheme_breaks("👩‍🍳") == Offsets{11});
}

TEST_CASE("composing is Unicode's NFC") {
    CHECK(to_nfc("Cre\u0300me") == "Crème");
    CHECK(to_nfc("Å") == "Å");
    CHECK(to_nfc("x\u030C") == "x\u030C");
}

TEST_CASE("characters are told by script, direction and what they do") {
    CHECK(script_of(U'é') == Script::Latin);
    CHECK(script_of(U'ψ') == Script::Greek);
    CHECK(script_of(U'щ') == Script::Cyrillic);
    CHECK(script_of(U'½') == Script::Common);
    CHECK(script_of(U'\u0301') == Script::Common);
    CHECK(script_of(U'ش') == Script::Other);
    CHECK(turns_direction(U'ש'));
    CHECK(turns_direction(U'٣')); // an Arabic-Indic digit
    CHECK(turns_direction(U'\u202E'));
    CHECK_FALSE(turns_direction(U'\u200E'));
    CHECK(is_control(U'\t'));
    CHECK(is_control(U'\u2028'));
    CHECK_FALSE(is_control(U' '));
    CHECK(is_space(U'\u202F'));
    CHECK(is_mark(U'\u0301'));
    CHECK(is_invisible(U'\u2060'));
}

TEST_CASE("what ASCII characters are is told as of any others") {
    for (char32_t c = 0; c < 0x80; ++c) {
        CAPTURE(static_cast<std::uint32_t>(c));
        const bool is_letter = (c >= U'a' && c <= U'z') || (c >= U'A' && c <= U'Z');
        CHECK((script_of(c) == Script::Latin) == is_letter);
        CHECK((script_of(c) == Script::Common) != is_letter);
        CHECK(is_control(c) == (c < 0x20 || c == 0x7F)); // U+0000 to U+001F and U+007F
        CHECK(is_space(c) == (c == 0x20));
        CHECK_FALSE(is_mark(c));
        CHECK_FALSE(is_invisible(c));
        CHECK_FALSE(turns_direction(c));
    }
}

TEST_CASE("characters beyond ASCII are told by their properties") {
    // The Unicode Standard 15.0: UnicodeData.txt (general category, bidirectional class) and
    // DerivedCoreProperties.txt (Default_Ignorable_Code_Point).
    for (const char32_t control : {U'\u0080', U'\u0085', U'\u009F', U'\u2028', U'\u2029'}) {
        CAPTURE(static_cast<std::uint32_t>(control));
        CHECK(is_control(control));
    }
    for (const char32_t space : {U'\u00A0', U'\u1680', U'\u2003', U'\u3000'}) {
        CAPTURE(static_cast<std::uint32_t>(space));
        CHECK(is_space(space));
        CHECK_FALSE(is_control(space));
    }
    for (const char32_t mark : {U'\u0300', U'\u0903', U'\u20DD'}) { // Mn, Mc, Me
        CAPTURE(static_cast<std::uint32_t>(mark));
        CHECK(is_mark(mark));
    }
    for (const char32_t unseen : {U'\u00AD', U'\u200B', U'\u200D', U'\uFE0F', U'\uFEFF'}) {
        CAPTURE(static_cast<std::uint32_t>(unseen));
        CHECK(is_invisible(unseen));
    }
    // R, AL, AN; LRE, RLE, PDF, LRO, RLO; LRI, RLI, FSI, PDI.
    for (const char32_t turning : {U'א', U'ع', U'٣', U'\u202A', U'\u202B', U'\u202C', U'\u202D',
                                   U'\u202E', U'\u2066', U'\u2067', U'\u2068', U'\u2069'}) {
        CAPTURE(static_cast<std::uint32_t>(turning));
        CHECK(turns_direction(turning));
    }
    for (const char32_t none : {U'é', U'½', U'щ', U'中', U'🍐'}) {
        CAPTURE(static_cast<std::uint32_t>(none));
        CHECK_FALSE(turns_direction(none));
        CHECK_FALSE(is_control(none));
        CHECK_FALSE(is_mark(none));
        CHECK_FALSE(is_invisible(none));
    }
    CHECK_FALSE(is_space(U'é'));
    CHECK_FALSE(is_space(U'\u200B'));
}
