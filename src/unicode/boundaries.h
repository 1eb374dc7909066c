#pragma once

#include <cstddef>
#include <string_view>
#include <vector>

namespace thawslip::unicode {

/// Where lines may end: byte offsets, rising, each the start of what would open the next line;
/// the end of the text is the last. Spaces belong to the line before. The root locale's rules
/// apply, never the user's.
/// Source: UAX #14, Unicode Line Breaking Algorithm, as ICU implements it.
/// \pre well-formed UTF-8
std::vector<std::size_t> line_breaks(std::string_view text);

/// Where a reader sees one character end: byte offsets, rising, the end of the text the last.
/// Source: UAX #29, Unicode Text Segmentation, extended grapheme clusters.
/// \pre well-formed UTF-8
std::vector<std::size_t> grapheme_breaks(std::string_view text);

} // namespace thawslip::unicode
