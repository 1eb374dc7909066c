#pragma once

#include "toml/value.h"

#include <string>
#include <string_view>

/// The makers of what this layer says. Messages: lower case, no full stop, found and expected.
namespace thawslip::toml {

/// Whether a key may hold it without quotes (TOML 1.0, "Keys").
bool is_bare_letter(char c);

/// A key as TOML wants it written: bare where that is allowed, else in quotes.
std::string written_key(std::string_view key);

/// `the text "six"`, `the whole number 6`, `a table`, …
std::string describe(const Value& value);

/// `[package.thaw]` or `[[package]]`, from a key path.
/// \pre `path` is not empty
std::string header_of(std::string_view path);

std::string unknown_key(std::string_view key, std::string_view table_path);
std::string missing_key(std::string_view key, std::string_view table_path);
std::string wrong_type(std::string_view subject, std::string_view expected, const Value& found);
std::string too_deep(std::size_t depth);

} // namespace thawslip::toml
