#include "app/json_text.h"

#include <fmt/format.h>

namespace thawslip::app {

std::string json_text(std::string_view text) {
    std::string json = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') {
            json += '\\';
            json += c;
        } else if (static_cast<unsigned char>(c) < 0x20) {
            json += fmt::format("\\u{:04x}", static_cast<unsigned char>(c));
        } else {
            json += c;
        }
    }
    return json + '"';
}

} // namespace thawslip::app
