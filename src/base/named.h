#pragma once

#include <cstddef>
#include <optional>
#include <string_view>

namespace thawslip {

/// A value of an enum, and what it is called. A table of such rows pairs them wherever in it a row
/// stands.
template <class Value>
struct Named {
    Value value;
    std::string_view name;
};

/// What the table calls `value`; empty where it has no row.
template <class Value, std::size_t rows>
constexpr std::string_view name_in(const Named<Value> (&table)[rows], Value value) {
    for (const auto& row : table) {
        if (row.value == value) {
            return row.name;
        }
    }
    return {};
}

/// The value that the table calls `name`; nothing where none is called so.
template <class Value, std::size_t rows>
constexpr std::optional<Value> value_in(const Named<Value> (&table)[rows], std::string_view name) {
    for (const auto& row : table) {
        if (row.name == name) {
            return row.value;
        }
    }
    return std::nullopt;
}

/// Whether every value from 0 to `last` has a name, and none two: for a static_assert.
template <class Value, std::size_t rows>
consteval bool names_all(const Named<Value> (&table)[rows], Value last) {
    for (std::size_t i = 0; i <= static_cast<std::size_t>(last); ++i) {
        if (name_in(table, static_cast<Value>(i)).empty()) {
            return false;
        }
    }
    return rows == static_cast<std::size_t>(last) + 1;
}

/// Whether a table has one row for each value from 0 to `last`, in their order, so that a value is
/// its row's place: for a static_assert beside the table.
template <class Row, std::size_t rows, class Value>
consteval bool rows_in_order(const Row (&table)[rows], Value Row::*value, Value last) {
    for (std::size_t i = 0; i < rows; ++i) {
        if (table[i].*value != static_cast<Value>(i)) {
            return false;
        }
    }
    return rows == static_cast<std::size_t>(last) + 1;
}

} // namespace thawslip
