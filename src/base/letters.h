#pragma once

#include <string>
#include <string_view>

namespace thawslip {

// ASCII only, whatever the locale says; of a byte or of a code point.

template <class Character>
constexpr bool is_digit(Character c) {
    return c >= '0' && c <= '9';
}

constexpr bool is_digit_at(std::string_view text, std::size_t at) {
    return at < text.size() && is_digit(text[at]);
}

constexpr bool is_upper(char c) {
    return c >= 'A' && c <= 'Z';
}

constexpr bool is_lower(char c) {
    return c >= 'a' && c <= 'z';
}

template <class Character>
constexpr bool is_latin_letter(Character c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

template <class Character>
constexpr bool is_letter_or_digit(Character c) {
    return is_latin_letter(c) || is_digit(c);
}

/// Whether a byte of UTF-8 is of a letter or a digit; what is beyond ASCII counts as one.
constexpr bool is_of_word(char c) {
    return is_letter_or_digit(c) || static_cast<unsigned char>(c) >= 0x80;
}

constexpr char to_upper(char c) {
    return is_lower(c) ? static_cast<char>(c - 'a' + 'A') : c;
}

constexpr char to_lower(char c) {
    return is_upper(c) ? static_cast<char>(c - 'A' + 'a') : c;
}

/// `text` with the letters A–Z made small; other bytes stay.
std::string lower(std::string_view text);

/// Whether two texts are the same but for the case of the letters A–Z.
bool same_but_for_case(std::string_view a, std::string_view b);

} // namespace thawslip
