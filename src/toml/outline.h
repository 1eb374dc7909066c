#pragma once

#include <cstddef>
#include <optional>
#include <string_view>
#include <vector>

namespace thawslip::toml {

/// What is open where reading stopped, without building anything: TOML's strings, comments and
/// brackets are followed byte by byte, keeping only the open brackets, so that a hostile file can
/// be measured before a recursive parser sees it.
struct Outline {
    std::optional<std::size_t> too_deep;    ///< the first byte that exceeds the depth
    std::optional<std::size_t> open_string; ///< opening quote of the string we stopped in
    std::vector<std::size_t> open_brackets; ///< offsets of `[` and `{`, outermost first
};

/// Follows `text` up to byte `stop`. On text that is well-formed so far it agrees with a parser.
/// `depth`: most brackets inside brackets, and most dotted parts of one key.
Outline outline(std::string_view text, std::size_t stop, std::size_t depth);

} // namespace thawslip::toml
