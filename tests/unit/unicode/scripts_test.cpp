#include "unicode/character.h"

#include <cstdint>
#include <doctest/doctest.h>

using namespace thawslip::unicode;

TEST_CASE(
    "letters are of their script, capital and small, and signs and what is unassigned are common") {
    // The Unicode Standard, Scripts.txt.
    const struct {
        Script script;
        const char32_t* letters;
    } rows[] = {
        {Script::Latin, U"aZéßŁĳ"},  {Script::Greek, U"αΩψς"},
        {Script::Cyrillic, U"щЖѣ"},  {Script::Armenian, U"ԱաՖ"},
        {Script::Georgian, U"აჰ"},   {Script::Common, U"5½—€·\u0301"},
        {Script::Common, U"\u0378"}, {Script::Other, U"אعक中あ한"},
    };
    for (const auto& row : rows) {
        for (const auto* letter = row.letters; *letter != U'\0'; ++letter) {
            CAPTURE(static_cast<std::uint32_t>(*letter));
            CHECK(script_of(*letter) == row.script);
        }
    }
}
