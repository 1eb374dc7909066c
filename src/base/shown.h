#pragma once

#include <string>
#include <string_view>

namespace thawslip {

/// `text` as it may be shown on a terminal or in a list of lines, whoever wrote it: control
/// characters (C0 but for tab and line feed, DEL and C1), Unicode's line and paragraph separators
/// and what turns the direction of writing round stand as `\u001b`, bytes that are no UTF-8 as
/// U+FFFD. In JSON, where these may stand in strings alone, the escape means the character itself
/// (RFC 8259, 7).
std::string shown(std::string_view text);

/// Whether `text` is one line of what may be shown as it is: `shown` changes nothing of it, and it
/// has neither tab nor line feed.
bool is_shown_line(std::string_view text);

/// How many bytes at the end of `text` are the beginning of a code point whose rest is missing.
std::size_t unfinished_utf8(std::string_view text);

} // namespace thawslip
