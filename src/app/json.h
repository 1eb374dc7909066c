#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::app {

/// A text as a JSON string with its quotes (RFC 8259, section 7). \pre `text` is UTF-8
std::string json_string(std::string_view text);

/// `[a,b]` of values that are JSON already.
std::string json_list(const std::vector<std::string>& values);

/// The same, each value on a line of its own, with the line's end: for long lists of records.
std::string json_lines(const std::vector<std::string>& values);

/// `["a","b"]`.
std::string json_strings(const std::vector<std::string>& texts);

} // namespace thawslip::app
