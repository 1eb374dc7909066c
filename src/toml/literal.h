#pragma once

#include "toml/value.h"

#include <string>
#include <string_view>

namespace thawslip::toml {

/// The inside of a basic string (TOML 1.0, "String"): quotes, backslashes and control characters
/// escaped, the rest as it stands. \param keep_line_ends for one of several lines. \pre UTF-8
std::string escaped(std::string_view text, bool keep_line_ends);

/// A text as a basic string with its quotes. \pre UTF-8
std::string literal_of(std::string_view text);

/// A key as it is written: bare where it may be, else in quotes. \pre UTF-8
std::string key_literal(std::string_view key);

/// A value as TOML 1.0 in one line: tables in braces, lists in brackets. Places are not looked at;
/// what is not a value of ours (a time of day, what could not be read) becomes an empty text.
std::string literal_of(const Value& value);

/// Whether two values say the same, wherever they stand. Tables say the same in any order.
bool is_same(const Value& one, const Value& other);

} // namespace thawslip::toml
