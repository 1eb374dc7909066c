#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::wording {

/// What a keyboard offers, as a compositor sets it: "7-9 h" → "7–9 h", "1 1/2 cups" → "1½ cups",
/// "2 x 400 g" → "2 × 400 g", "74 C" → "74 °C", straight quotes → curly, "..." → "…".
/// Words that are not of that kind pass unchanged.
std::string typeset_text(std::string_view text);

/// With a word joiner (U+2060) after each hyphen, so that no line breaks inside: bag ids.
std::string unbroken(std::string_view text);

/// With no-break spaces (U+00A0) for its spaces, so that it stays on one line: dates.
std::string with_no_break_spaces(std::string_view text);

/// What stands between things that are named in a row: ", ", or "; " where one of them has a comma
/// of its own, as "potatoes, halved".
std::string_view between(const std::vector<std::string>& things);

/// With a capital first letter (ASCII, Latin-1, Greek and Cyrillic small letters).
std::string capitalised(std::string_view text);

} // namespace thawslip::wording
