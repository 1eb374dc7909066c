#pragma once

#include "base/list.h"
#include "toml/file_table.h"

#include <iterator>
#include <optional>
#include <string_view>
#include <vector>

namespace thawslip::toml {

/// A value, and the word that it is written as. A list of these pairs them wherever a row stands.
template <class Value>
struct Choice {
    Value value;
    Word word;
};

template <class Choices>
std::vector<Word> words_of(const Choices& choices) {
    return mapped(choices, [](const auto& choice) { return choice.word; });
}

/// As Table::word, with the value beside the word.
template <class Choices>
auto read_choice(Table& table, const Key& key, std::string_view what, const Choices& choices) {
    const auto found = table.word(key, what, words_of(choices));
    return found ? std::optional{std::data(choices)[*found].value} : std::nullopt;
}

} // namespace thawslip::toml
