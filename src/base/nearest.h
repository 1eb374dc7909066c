#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace thawslip {

/// Fewest single-character insertions, deletions, substitutions and swaps of neighbours that turn
/// `a` into `b` (optimal string alignment distance), counted in bytes.
std::size_t edit_distance(std::string_view a, std::string_view b);

/// The candidate that was probably meant: fewest edits, at most a third of the longer word and
/// at most 3; letter case ignored; the first of equals. Nothing when none is near.
std::optional<std::string> nearest(std::string_view word, std::span<const std::string> candidates);

/// `a, b or c`, each in double quotes, for "expected …" messages.
std::string list_of(std::span<const std::string> words);

/// What may be written in place of `word`, as a hint: `did you mean "a"?` where one was probably
/// meant; `expected "a" or "b"` where there are at most six; else the three that come nearest,
/// those that hold the word first, then those with the fewest edits. Letter case is ignored.
std::string near_names(std::string_view word, std::span<const std::string> candidates);

} // namespace thawslip
