#include "unicode/character.h"

#include "unicode/icu_error.h"

#include <unicode/uchar.h>
#include <unicode/uscript.h>

namespace thawslip::unicode {
namespace {

UChar32 icu_character(char32_t character) {
    return static_cast<UChar32>(character);
}

// Most text is ASCII, so each question is answered for it before ICU's tables are asked.

bool is_ascii(char32_t character) {
    return character < 0x80;
}

bool is_of_category(char32_t character, std::uint32_t mask) {
    return (U_GET_GC_MASK(icu_character(character)) & mask) != 0;
}

} // namespace

Script script_of(char32_t character) {
    if (is_ascii(character)) {
        const char32_t small = character | 0x20U;
        return small >= U'a' && small <= U'z' ? Script::Latin : Script::Common;
    }
    UErrorCode error = U_ZERO_ERROR;
    const auto code = uscript_getScript(icu_character(character), &error);
    require_success(error, "script data");
    // Not a switch: ICU knows over 200 scripts, all of which -Wswitch-enum would want named.
    constexpr struct {
        UScriptCode code;
        Script script;
    } known[] = {
        {USCRIPT_COMMON, Script::Common},     {USCRIPT_INHERITED, Script::Common},
        {USCRIPT_LATIN, Script::Latin},       {USCRIPT_GREEK, Script::Greek},
        {USCRIPT_CYRILLIC, Script::Cyrillic}, {USCRIPT_ARMENIAN, Script::Armenian},
        {USCRIPT_GEORGIAN, Script::Georgian}, {USCRIPT_UNKNOWN, Script::Common},
    };
    for (const auto& entry : known) {
        if (entry.code == code) {
            return entry.script;
        }
    }
    return Script::Other;
}

bool turns_direction(char32_t character) {
    constexpr std::uint32_t turning =
        U_MASK(U_RIGHT_TO_LEFT) | U_MASK(U_RIGHT_TO_LEFT_ARABIC) | U_MASK(U_ARABIC_NUMBER) |
        U_MASK(U_LEFT_TO_RIGHT_EMBEDDING) | U_MASK(U_LEFT_TO_RIGHT_OVERRIDE) |
        U_MASK(U_RIGHT_TO_LEFT_EMBEDDING) | U_MASK(U_RIGHT_TO_LEFT_OVERRIDE) |
        U_MASK(U_POP_DIRECTIONAL_FORMAT) | U_MASK(U_FIRST_STRONG_ISOLATE) |
        U_MASK(U_LEFT_TO_RIGHT_ISOLATE) | U_MASK(U_RIGHT_TO_LEFT_ISOLATE) |
        U_MASK(U_POP_DIRECTIONAL_ISOLATE);
    return !is_ascii(character) &&
           (U_MASK(u_charDirection(icu_character(character))) & turning) != 0;
}

bool is_control(char32_t character) {
    return is_ascii(character)
               ? character < 0x20 || character == 0x7F
               : is_of_category(character, U_GC_CC_MASK | U_GC_ZL_MASK | U_GC_ZP_MASK);
}

bool is_invisible(char32_t character) {
    return !is_ascii(character) &&
           u_hasBinaryProperty(icu_character(character), UCHAR_DEFAULT_IGNORABLE_CODE_POINT) != 0;
}

bool is_mark(char32_t character) {
    return !is_ascii(character) && is_of_category(character, U_GC_M_MASK);
}

bool is_space(char32_t character) {
    return is_ascii(character) ? character == U' ' : is_of_category(character, U_GC_ZS_MASK);
}

} // namespace thawslip::unicode
