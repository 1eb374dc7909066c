#pragma once

#include <cstdint>
#include <string>
#include <variant>
#include <vector>

namespace thawslip::archive {

/// Bytes that are no text.
struct Bytes {
    std::string bytes;
};

/// What a statement is asked with; std::monostate: nothing.
using Parameter = std::variant<std::monostate, std::int64_t, double, std::string, Bytes>;

/// What stands in one column of an answer, texts and bytes alike; std::monostate: nothing.
using Value = std::variant<std::monostate, std::int64_t, double, std::string>;
using Rows = std::vector<std::vector<Value>>;

} // namespace thawslip::archive
