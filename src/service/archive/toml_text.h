#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::service {

/// `key = "text"` as a line of TOML 1.0; several lines of text as a multi-line string, so that it
/// stays readable. Reading it gives the same bytes. Text that is no UTF-8 becomes
/// `key_hex = "2f6f…"`.
std::string toml_line(std::string_view key, std::string_view text);

/// `key = ["a", "b"]`. \pre the texts are UTF-8
std::string toml_line(std::string_view key, const std::vector<std::string>& texts);

/// A text as a basic string with its quotes (TOML 1.0, "String"). \pre UTF-8
std::string toml_string(std::string_view text);

/// The bytes that pairs of hexadecimal digits stand for; empty where they are none.
std::string bytes_of_hex(std::string_view hex);

} // namespace thawslip::service
