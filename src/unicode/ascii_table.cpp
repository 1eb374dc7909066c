#include "unicode/ascii_table.h"

#include <algorithm>
#include <iterator>

namespace thawslip::unicode {
namespace {

struct Fold {
    char32_t character;
    std::string_view ascii;
};

constexpr Fold fractions[] = {
    {U'¼', "1/4"},  {U'½', "1/2"}, {U'¾', "3/4"}, {U'⅐', "1/7"}, {U'⅑', "1/9"},
    {U'⅒', "1/10"}, {U'⅓', "1/3"}, {U'⅔', "2/3"}, {U'⅕', "1/5"}, {U'⅖', "2/5"},
    {U'⅗', "3/5"},  {U'⅘', "4/5"}, {U'⅙', "1/6"}, {U'⅚', "5/6"}, {U'⅛', "1/8"},
    {U'⅜', "3/8"},  {U'⅝', "5/8"}, {U'⅞', "7/8"}, {U'↉', "0/3"},
};

// What a cook types for a sign: common practice, no source.
constexpr Fold signs[] = {
    {U'‐', "-"},   {U'‑', "-"},   {U'‒', "-"},   {U'–', "-"},   {U'—', "-"},   {U'―', "-"},
    {U'−', "-"},   {U'·', "-"},   {U'•', "*"},   {U'…', "..."}, {U'→', "->"},  {U'←', "<-"},
    {U'⁄', "/"},   {U'∕', "/"},   {U'×', "x"},   {U'÷', "/"},   {U'±', "+-"},  {U'≈', "~"},
    {U'≤', "<="},  {U'≥', ">="},  {U'‘', "'"},   {U'’', "'"},   {U'‚', "'"},   {U'‛', "'"},
    {U'′', "'"},   {U'´', "'"},   {U'ʼ', "'"},   {U'‹', "'"},   {U'›', "'"},   {U'“', "\""},
    {U'”', "\""},  {U'„', "\""},  {U'‟', "\""},  {U'″', "\""},  {U'«', "\""},  {U'»', "\""},
    {U'¡', "!"},   {U'¿', "?"},   {U'€', "EUR"}, {U'£', "GBP"}, {U'¥', "JPY"}, {U'¢', "c"},
    {U'§', "S."},  {U'©', "(c)"}, {U'®', "(R)"}, {U'™', "TM"},  {U'№', "No."}, {U'µ', "u"},
    {U'¹', "1"},   {U'²', "2"},   {U'³', "3"},   {U'ª', "a"},   {U'º', "o"},   {U'☐', "[ ]"},
    {U'☑', "[x]"}, {U'✓', "[x]"}, {U'✔', "[x]"}, {U'¦', "|"},   {U'¨', "\""},  {U'¯', "-"},
    {U'¸', ","},   {U'¬', "-"},
};

// Latin letters that are no base letter with a mark. Source: Unicode CLDR, transform Latin-ASCII.
constexpr Fold latin[] = {
    {U'ß', "ss"}, {U'æ', "ae"}, {U'œ', "oe"}, {U'ø', "o"}, {U'đ', "d"},  {U'ð', "d"},  {U'þ', "th"},
    {U'ł', "l"},  {U'ħ', "h"},  {U'ı', "i"},  {U'ĸ', "q"}, {U'ŋ', "n"},  {U'ŧ', "t"},  {U'ƒ', "f"},
    {U'ſ', "s"},  {U'ĳ', "ij"}, {U'ŉ', "'n"}, {U'ŀ', "l"}, {U'ﬁ', "fi"}, {U'ﬂ', "fl"},
};

// Source: ELOT 743 (ISO 843:1997, type 2), from memory; υ after a vowel is seen to elsewhere.
constexpr Fold greek[] = {
    {U'α', "a"},  {U'β', "v"},  {U'γ', "g"},  {U'δ', "d"}, {U'ε', "e"}, {U'ζ', "z"}, {U'η', "i"},
    {U'θ', "th"}, {U'ι', "i"},  {U'κ', "k"},  {U'λ', "l"}, {U'μ', "m"}, {U'ν', "n"}, {U'ξ', "x"},
    {U'ο', "o"},  {U'π', "p"},  {U'ρ', "r"},  {U'σ', "s"}, {U'ς', "s"}, {U'τ', "t"}, {U'υ', "y"},
    {U'φ', "f"},  {U'χ', "ch"}, {U'ψ', "ps"}, {U'ω', "o"},
};

// Source: ICAO Doc 9303, part 3, transliteration of Cyrillic, from memory; a soft sign is silent.
constexpr Fold cyrillic[] = {
    {U'а', "a"},  {U'б', "b"},  {U'в', "v"},  {U'г', "g"},  {U'ґ', "g"},    {U'д', "d"},
    {U'ђ', "dj"}, {U'е', "e"},  {U'є', "ie"}, {U'ж', "zh"}, {U'з', "z"},    {U'ѕ', "dz"},
    {U'и', "i"},  {U'і', "i"},  {U'ј', "j"},  {U'к', "k"},  {U'л', "l"},    {U'љ', "lj"},
    {U'м', "m"},  {U'н', "n"},  {U'њ', "nj"}, {U'о', "o"},  {U'п', "p"},    {U'р', "r"},
    {U'с', "s"},  {U'т', "t"},  {U'ћ', "c"},  {U'у', "u"},  {U'ф', "f"},    {U'х', "kh"},
    {U'ц', "ts"}, {U'ч', "ch"}, {U'џ', "dz"}, {U'ш', "sh"}, {U'щ', "shch"}, {U'ъ', "ie"},
    {U'ы', "y"},  {U'ь', ""},   {U'э', "e"},  {U'ю', "iu"}, {U'я', "ia"},
};

template <class Table>
const Fold* find_in(const Table& table, char32_t character) {
    const auto* found =
        std::find_if(std::begin(table), std::end(table),
                     [character](const Fold& fold) { return fold.character == character; });
    return found == std::end(table) ? nullptr : found;
}

} // namespace

std::optional<std::string_view> ascii_for(char32_t character) {
    for (const auto* fold : {find_in(signs, character), find_in(latin, character),
                             find_in(greek, character), find_in(cyrillic, character)}) {
        if (fold != nullptr) {
            return fold->ascii;
        }
    }
    return std::nullopt;
}

std::optional<std::string_view> ascii_fraction(char32_t character) {
    const auto* fold = find_in(fractions, character);
    return fold == nullptr ? std::nullopt : std::optional{fold->ascii};
}

} // namespace thawslip::unicode
