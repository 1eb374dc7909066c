#pragma once

#include <string>
#include <string_view>

namespace thawslip {

/// `text` safe for a terminal: control characters and bytes that are not UTF-8 become U+FFFD.
std::string printable(std::string_view text);

/// `text` in double quotes, printable, cut to 40 characters and `…`.
std::string in_quotes(std::string_view text);

} // namespace thawslip
