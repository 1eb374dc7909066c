#pragma once

namespace thawslip::unicode {

/// Scripts that run left to right, letter after letter, and need no reordering. Common is what
/// all scripts share (digits, punctuation) and what takes the script of its base (accents).
/// Source: UAX #24, Unicode Script Property.
enum class Script { Common, Latin, Greek, Cyrillic, Armenian, Georgian, Other };

Script script_of(char32_t character);

/// Whether the character runs, or makes others run, from right to left: bidirectional classes
/// R, AL and AN and the explicit embeddings, overrides and isolates.
/// Source: UAX #9, Unicode Bidirectional Algorithm, table 4.
bool turns_direction(char32_t character);

/// Whether it is a control character or ends a line or paragraph: categories Cc, Zl and Zp.
bool is_control(char32_t character);

/// Whether it only means something to its neighbours and never shows (word joiner, soft hyphen,
/// zero-width space, variation selectors): the property Default_Ignorable_Code_Point.
bool is_invisible(char32_t character);

/// Whether it is drawn on the character before it: categories Mn, Mc and Me.
bool is_mark(char32_t character);

/// Whether it is a space of some width: category Zs.
bool is_space(char32_t character);

} // namespace thawslip::unicode
