#pragma once

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace thawslip::http {

/// What a request line asks for, taken apart and decoded once (RFC 9112, section 3.2; RFC 3986).
struct Target {
    std::string host = {}; ///< "127.0.0.1:8123", of the absolute form; else empty
    std::string path = {}; ///< begins with "/"
    /// As a form of HTML writes it (URL Standard, application/x-www-form-urlencoded): "+" is a
    /// space; of a name given twice the last.
    std::map<std::string, std::string> query = {};
};

/// \param text as it was sent: "/api/read?as=photo"
/// \returns nothing where it is no target: "%" without two hexadecimal digits, bytes that no URI
/// has, what decodes to no UTF-8, to NUL, or in the path to any control character
std::optional<Target> read_target(std::string_view text);

} // namespace thawslip::http
