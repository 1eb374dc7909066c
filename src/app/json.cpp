#include "app/json.h"

#include <fmt/format.h>

namespace thawslip::app {

std::string json_string(std::string_view text) {
    std::string json = "\"";
    for (const char c : text) {
        if (c == '"' || c == '\\') {
            json += '\\';
            json += c;
        } else if (static_cast<unsigned char>(c) < 0x20) {
            json += fmt::format("\\u{:04x}", static_cast<unsigned>(c));
        } else {
            json += c;
        }
    }
    return json + "\"";
}

std::string json_list(const std::vector<std::string>& values) {
    return fmt::format("[{}]", fmt::join(values, ","));
}

std::string json_lines(const std::vector<std::string>& values) {
    return values.empty() ? "[]\n" : fmt::format("[\n  {}\n]\n", fmt::join(values, ",\n  "));
}

std::string json_strings(const std::vector<std::string>& texts) {
    std::vector<std::string> values;
    for (const auto& text : texts) {
        values.push_back(json_string(text));
    }
    return json_list(values);
}

} // namespace thawslip::app
