#include "json/value.h"

template class nlohmann::basic_json<nlohmann::ordered_map>;

namespace thawslip::json {

Json parsed(std::string_view text) {
    return Json::parse(text, nullptr, /*allow_exceptions=*/false);
}

std::string to_text(const Json& value) {
    return value.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string to_lines(const Json& list) {
    std::string lines;
    for (const auto& value : list) {
        lines += (lines.empty() ? "\n  " : ",\n  ") + to_text(value);
    }
    return "[" + lines + (lines.empty() ? "]\n" : "\n]\n");
}

} // namespace thawslip::json
