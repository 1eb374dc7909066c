#pragma once

#include <optional>
#include <string_view>

namespace thawslip::unicode {

/// What is typed instead of a sign or small letter that ASCII lacks; nothing when the table does
/// not know it. Accented letters are to be decomposed first, capitals made small.
std::optional<std::string_view> ascii_for(char32_t character);

/// "1/2" for ½; nothing for other characters.
std::optional<std::string_view> ascii_fraction(char32_t character);

} // namespace thawslip::unicode
