#pragma once

#include <algorithm>
#include <initializer_list>
#include <iterator>
#include <string_view>
#include <type_traits>
#include <utility>

namespace thawslip {

/// Whether one of the elements equals `value`.
template <class List, class Value>
constexpr bool contains(const List& list, const Value& value) {
    return std::ranges::find(list, value) != std::ranges::end(list);
}

constexpr bool is_one_of(std::string_view text, std::initializer_list<std::string_view> texts) {
    return contains(texts, text);
}

template <class Enum>
requires std::is_enum_v<Enum>
constexpr bool is_one_of(Enum value, std::initializer_list<Enum> values) {
    return contains(values, value);
}

/// Appends `value` where no element equals it.
template <class List, class Value>
void add_once(List& list, Value value) {
    if (!contains(list, value)) {
        list.push_back(std::move(value));
    }
}

/// Appends each of `more` that the list does not have.
template <class List>
void add_all_once(List& list, const List& more) {
    for (const auto& value : more) {
        add_once(list, value);
    }
}

} // namespace thawslip
