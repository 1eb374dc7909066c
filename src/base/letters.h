#pragma once

#include <string>
#include <string_view>

namespace thawslip {

// ASCII only, whatever the locale says; of a byte or of a code point.

template <class Character>
constexpr bool is_digit(Character c) {
    return c >= '0' && c <= '9';
}

constexpr bool is_upper(char c) {
    return c >= 'A' && c <= 'Z';
}

template <class Character>
constexpr bool is_latin_letter(Character c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

constexpr char to_upper(char c) {
    return c >= 'a' && c <= 'z' ? static_cast<char>(c - 'a' + 'A') : c;
}

constexpr char to_lower(char c) {
    return is_upper(c) ? static_cast<char>(c - 'A' + 'a') : c;
}

/// `text` with the letters A–Z made small; other bytes stay.
std::string lower(std::string_view text);

/// Whether two texts are the same but for the case of the letters A–Z.
bool same_but_for_case(std::string_view a, std::string_view b);

} // namespace thawslip
