#pragma once

#include "base/list.h"
#include "toml/file_table.h"

#include <array>
#include <string_view>
#include <vector>

namespace thawslip::layout {

/// A word of a layout file, and what it stands for.
template <class Value>
struct Named {
    toml::Word word;
    Value value;
};

template <class Value, std::size_t count>
std::vector<toml::Word> words_of(const std::array<Named<Value>, count>& named) {
    return mapped(named, &Named<Value>::word);
}

/// What the word under `key` stands for; `fallback` where none is written. One that is none of
/// `named` is reported.
template <class Value, std::size_t count>
Value choice(toml::Table& table, const toml::Key& key, std::string_view what,
             const std::array<Named<Value>, count>& named, Value fallback) {
    const auto found = table.word(key, what, words_of(named));
    return found ? named[*found].value : fallback;
}

/// What each word of a list stands for; one that is none of `named` is reported.
template <class Value, std::size_t count>
std::vector<Value> choices(toml::Table& table, const toml::Key& key, std::string_view what,
                           const std::array<Named<Value>, count>& named) {
    constexpr std::size_t most = 64;
    return mapped(table.words(key, most, what, words_of(named)),
                  [&named](std::size_t position) { return named[position].value; });
}

} // namespace thawslip::layout
