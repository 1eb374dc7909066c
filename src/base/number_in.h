#pragma once

#include <charconv>
#include <optional>
#include <string_view>
#include <system_error>

namespace thawslip {

/// The number that a whole text is, by std::from_chars: 8 of "8", as a real number 1.5 of "1.5".
/// Nothing for other texts, those with blanks or a plus among them, and for one that is too large.
template <class Number>
std::optional<Number> number_in(std::string_view text) {
    Number number{};
    const auto* const end = text.data() + text.size();
    const auto read = std::from_chars(text.data(), end, number);
    return read.ec == std::errc{} && read.ptr == end ? std::optional{number} : std::nullopt;
}

} // namespace thawslip
