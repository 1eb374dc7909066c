#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>

namespace thawslip {

/// Byte offset of the first byte that is not well-formed UTF-8 (RFC 3629: no overlong forms, no
/// surrogates, nothing above U+10FFFF); nothing when all of `text` is well-formed.
std::optional<std::size_t> first_invalid_utf8(std::string_view text);

/// The code point that starts at `offset`, which is moved past it.
/// \pre `text` is well-formed and `offset` stands at the start of a code point
char32_t next_code_point(std::string_view text, std::size_t& offset);

std::u32string to_utf32(std::string_view text); ///< \pre well-formed
void append_utf8(std::string& text, char32_t code_point);
std::string to_utf8(std::u32string_view text);
std::size_t count_code_points(std::string_view text); ///< \pre well-formed

/// `U+00E9 "é"`; only `U+0007` for a control character, which must not reach a terminal.
std::string name_of(char32_t code_point);

} // namespace thawslip
