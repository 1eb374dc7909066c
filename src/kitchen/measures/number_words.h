#pragma once

#include "kitchen/measures/number_text.h"

#include <optional>
#include <string_view>

namespace thawslip::kitchen {

/// Reads a number in words before what is counted, at byte `at`: "half a lemon", "a litre of
/// stock", "two onions", "drei bis vier Möhren", "dos cebollas"; up to twelve. Its end is where the
/// unit or the item begins. Nothing where a number is rather part of a name: "five spice powder",
/// "three bean mix", "cuatro quesos".
std::optional<ReadRange> number_in_words(std::string_view text, std::size_t at);

} // namespace thawslip::kitchen
