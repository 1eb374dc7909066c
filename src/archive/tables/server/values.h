#pragma once

#include <compare>
#include <cstddef>
#include <cstdint>
#include <memory>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace thawslip::archive {

/// Bytes that are no text.
struct Bytes {
    std::string bytes;
    friend auto operator<=>(const Bytes&, const Bytes&) = default;
};

/// Many values of one type, as PostgreSQL writes an array (PostgreSQL 15, 8.15.2).
struct Array {
    enum class Of { Integers, Reals, Texts, Bytes };
    Of of = Of::Texts;
    std::string written;
    friend auto operator<=>(const Array&, const Array&) = default;
};

/// What a statement is asked with; std::monostate: nothing.
using Parameter = std::variant<std::monostate, std::int64_t, double, std::string, Bytes, Array>;

/// What stands in one column of an answer, texts and bytes alike; std::monostate: nothing.
using Value = std::variant<std::monostate, std::int64_t, double, std::string_view>;

/// The rows of an answer. Their texts stand in what the server sent, which is kept as long: a list
/// is thousands of them.
struct Rows {
    std::shared_ptr<const void> sent;
    std::size_t columns = 0;
    std::vector<Value> values; ///< of one row after the other

    std::size_t size() const { return columns == 0 ? 0 : values.size() / columns; }
    /// \returns nothing where there is no such row or column
    Value at(std::size_t row, std::size_t column) const {
        return row < size() && column < columns ? values[row * columns + column] : Value{};
    }
};

/// A statement that waits to be sent.
struct Posted {
    std::string sql; ///< with $1, $2…
    std::vector<Parameter> parameters;
    bool is_question = false; ///< its rows are wanted
};

} // namespace thawslip::archive
