#pragma once

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

/// What the word under `key` stands for; `fallback` where none is written. One that is none of
/// `named` is reported.
template <class Value, std::size_t count>
Value choice(toml::Table& table, const toml::Key& key, std::string_view what,
             const std::array<Named<Value>, count>& named, Value fallback) {
    std::vector<toml::Word> words;
    for (const auto& one : named) {
        words.push_back(one.word);
    }
    const auto found = table.word(key, what, words);
    return found ? named[*found].value : fallback;
}

} // namespace thawslip::layout
