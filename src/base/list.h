#pragma once

#include <algorithm>
#include <functional>
#include <initializer_list>
#include <iterator>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <vector>

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
template <class List, class More>
void add_all_once(List& list, const More& more) {
    for (const auto& value : more) {
        add_once(list, value);
    }
}

/// What `of` makes of each element, in their order: `mapped(bags, &Bag::id)`;
/// `mapped<std::set<std::string>>(bags, &Bag::id)`, where a vector is not meant.
template <class List, class Range, class Of>
List mapped(Range&& range, Of of) {
    List list;
    for (auto&& value : range) {
        list.insert(list.end(), std::invoke(of, value));
    }
    return list;
}

template <class Range, class Of>
auto mapped(Range&& range, Of of) {
    using Made = std::invoke_result_t<Of&, decltype(*std::begin(range))>;
    return mapped<std::vector<std::decay_t<Made>>>(range, of);
}

/// What `of` makes of each element, one behind the other, with `between` between two of them.
template <class Range, class Of = std::identity>
std::string joined(const Range& range, std::string_view between, Of of = {}) {
    std::string text;
    std::string_view before;
    for (const auto& value : range) {
        text += before;
        text += std::invoke(of, value);
        before = between;
    }
    return text;
}

} // namespace thawslip
