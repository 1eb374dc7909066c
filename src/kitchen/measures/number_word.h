#pragma once

#include <charconv>
#include <optional>
#include <string>

namespace thawslip::kitchen {

/// The number that a word of a text is: 8 of "8", 1.5 of "1.5"; nothing for other words.
inline std::optional<double> number_in(const std::string& word) {
    double value = 0.0;
    const auto* end = word.data() + word.size();
    const auto result = std::from_chars(word.data(), end, value);
    return result.ec == std::errc{} && result.ptr == end ? std::optional{value} : std::nullopt;
}

} // namespace thawslip::kitchen
