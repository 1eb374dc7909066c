#pragma once

#include <string>
#include <string_view>

namespace thawslip::app {

/// `text` as a JSON string with its quotes (RFC 8259, section 7). \pre well-formed UTF-8
std::string json_text(std::string_view text);

} // namespace thawslip::app
