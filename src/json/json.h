#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

namespace thawslip::json {

/// A value of JSON (RFC 8259) whose members stay in the order in which they were given.
using Json = nlohmann::ordered_json;

/// What a text in JSON says; what it is not is "discarded" (RFC 8259 allows nothing after it).
Json parsed(std::string_view text);

/// A value on one line, without its end. Bytes that are no UTF-8 stand as U+FFFD.
std::string to_text(const Json& value);

/// A list with each value on a line of its own, with the line's end: for long lists of records.
std::string to_lines(const Json& list);

} // namespace thawslip::json
