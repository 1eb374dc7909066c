#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

namespace thawslip::json {

/// A value of JSON (RFC 8259) whose members stay in the order in which they were given.
using Json = nlohmann::ordered_json;

/// A value on one line, without its end. Bytes that are no UTF-8 stand as U+FFFD.
std::string to_text(const Json& value);

/// A list with each value on a line of its own, with the line's end: for long lists of records.
std::string to_lines(const Json& list);

} // namespace thawslip::json
