#pragma once

#include "toml/file_table.h"

#include <optional>
#include <string>
#include <string_view>

namespace thawslip::toml {

inline constexpr std::string_view expected_text = "text in double quotes";
inline constexpr std::string_view expected_integer = "a whole number";
inline constexpr std::string_view expected_real = "a number";
inline constexpr std::string_view expected_boolean = "true or false";
inline constexpr std::string_view expected_date = "a date";
inline constexpr std::string_view expected_list = "a list in brackets";
inline constexpr std::string_view expected_text_or_list = "text in double quotes or a list of them";

/// What to write instead of `found`; empty where there is nothing to say.
std::string type_hint(const Key& key, std::string_view expected, const Value& found);

/// `did you mean "servings"?`, or the keys known here.
std::string nearest_key_hint(std::string_view key, const std::vector<std::string>& known);

/// The word that was probably meant, by its own spelling or another of `also`.
std::optional<std::string> nearest_word(std::string_view written, std::span<const Word> words);

std::optional<double> as_real(const Value& value);
std::string_view trimmed(std::string_view text); ///< without spaces and tabs around it

} // namespace thawslip::toml
