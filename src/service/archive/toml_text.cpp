#include "service/archive/toml_text.h"

#include "base/list.h"
#include "base/utf8.h"
#include "toml/literal.h"

#include <fmt/format.h>

namespace thawslip::service {
namespace {

std::string hex_of(std::string_view bytes) {
    std::string hex;
    for (const char c : bytes) {
        hex += fmt::format("{:02x}", static_cast<unsigned>(static_cast<unsigned char>(c)));
    }
    return hex;
}

int digit_of(char c) {
    return c >= '0' && c <= '9' ? c - '0' : c >= 'a' && c <= 'f' ? c - 'a' + 10 : -1;
}

} // namespace

std::string toml_string(std::string_view text) {
    return toml::literal_of(text);
}

std::string toml_line(std::string_view key, std::string_view text) {
    if (first_invalid_utf8(text)) {
        return fmt::format("{}_hex = \"{}\"\n", key, hex_of(text));
    }
    if (text.find('\n') == std::string_view::npos) {
        return fmt::format("{} = {}\n", key, toml_string(text));
    }
    return fmt::format("{} = \"\"\"\n{}\"\"\"\n", key, toml::escaped(text, true));
}

std::string toml_line(std::string_view key, const std::vector<std::string>& texts) {
    return fmt::format("{} = [{}]\n", key, joined(texts, ", ", toml_string));
}

std::string bytes_of_hex(std::string_view hex) {
    std::string bytes;
    for (std::size_t i = 0; i + 1 < hex.size(); i += 2) {
        const int high = digit_of(hex[i]);
        const int low = digit_of(hex[i + 1]);
        if (high < 0 || low < 0) {
            return {};
        }
        bytes += static_cast<char>(high * 16 + low);
    }
    return bytes;
}

} // namespace thawslip::service
