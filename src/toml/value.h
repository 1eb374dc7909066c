#pragma once

#include <chrono>
#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace thawslip::toml {

/// A stretch of a document's text, in bytes: the first and one past the last. Who puts another
/// text into a value's stretch leaves all else of the file as the cook wrote it.
struct Stretch {
    std::size_t begin = 0;
    std::size_t end = 0;
};

struct Value;
struct Member;

/// The kinds of time that no key of ours wants: a time of day, a date with a time.
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
using Content = std::variant<Members, Array, std::string, std::int64_t, double, bool, Date,
                             OtherTime, Unreadable>;

/// One value of a TOML file, with its place: a table that has a header stands at the header, one
/// that dots made at the key.
struct Value {
    Content content;
    Stretch place;
};

struct Member {
    std::string key;
    Stretch key_place;
    Value value;
};

/// The member called `key`, or else the first whose name differs from it by letter case alone, so
/// that what stands below a misspelt key is read and judged all the same; nullptr when there is
/// none or `value` is no table.
const Value* member(const Value& value, std::string_view key);

} // namespace thawslip::toml
