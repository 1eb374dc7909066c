#pragma once

#include <span>
#include <string>
#include <string_view>

namespace thawslip::render {

/// The text each glyph code stands for, as a CMap that readers copy and search by
/// (ISO 32000-1, 9.10.3 "ToUnicode CMaps"; Adobe Technical Note 5411, blocks of at most 100).
///
/// `texts[i]` is the UTF-8 text of code i + 1; an empty one gets no entry.
/// \pre every text is well-formed
std::string to_unicode_cmap(std::span<const std::string> texts);

/// Appends UTF-16, big end first, in hexadecimal: "00e9"; U+1F95A is "d83edd5a".
void append_utf16_hex(std::string& out, std::string_view utf8);

} // namespace thawslip::render
