#pragma once

#include "base/geometry.h"
#include "toml/file_table.h"

#include <optional>
#include <string_view>
#include <vector>

namespace thawslip::layout {

/// Keys that stock files and settings share. Each reader reports what is wrong at its place and
/// returns nothing; it also returns nothing where the key is absent.

/// A list of exactly `count` lengths. `meaning` ends the message when there are more or fewer:
/// "across and down".
std::optional<std::vector<Length>> read_lengths(toml::Table& table, const toml::Key& key,
                                                std::size_t count, std::string_view meaning);

/// A list of two lengths, across and down.
std::optional<Size> read_size(toml::Table& table, const toml::Key& key);

extern const toml::Key paper_key;
extern const toml::Key sheet_key;

/// `paper = "a6 landscape"` or `sheet = ["210 mm", "297 mm"]`; both are a fault.
std::optional<Size> read_paper(toml::Table& table);

} // namespace thawslip::layout
