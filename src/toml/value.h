#pragma once

#include <chrono>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace thawslip::toml {

/// Where something stands in the text: first character and one past the last. Lines and columns
/// count from 1, columns in code points, a byte-order mark not counted.
struct Mark {
    std::uint32_t line = 0;
    std::uint32_t column = 0;
    std::uint32_t end_line = 0;
    std::uint32_t end_column = 0;
};

struct Value;
struct Member;

/// The kinds of time that no key of ours wants: `local time`, `local date-time`, …
struct OtherTime {
    std::string_view kind;
};

/// Stands where a value was that is no TOML and has been reported: what asks for it gets nothing,
/// and nothing more is said about it.
struct Unreadable {};

struct Array {
    std::vector<Value> elements;
};

/// A table's members in the order of the file.
struct Members {
    std::vector<Member> list;
};

using Date = std::chrono::year_month_day;

/// One value of a TOML file, with its place. A table that has a header is marked at the header.
struct Value {
    std::variant<Members, Array, std::string, std::int64_t, double, bool, Date, OtherTime,
                 Unreadable>
        content;
    Mark mark;
};

struct Member {
    std::string key;
    Mark key_mark;
    Value value;
};

/// The member called `key`; nullptr when there is none or `value` is no table.
const Value* member(const Value& value, std::string_view key);

} // namespace thawslip::toml
