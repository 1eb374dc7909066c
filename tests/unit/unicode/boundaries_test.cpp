#include "unicode/boundaries.h"
#include "unicode/character.h"
#include "unicode/normalize.h"

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
