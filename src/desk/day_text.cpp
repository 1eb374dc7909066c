#include "desk/day_text.h"

#include "kitchen/bag_id.h"

#include <array>
#include <fmt/format.h>

namespace thawslip::desk {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// With another end of each line.
std::string with_ends(std::string_view text, std::string_view end) {
    std::string result;
    for (std::size_t at = 0; at < text.size();) {
        const auto line_end = text.find('\n', at);
        auto line = text.substr(at, line_end - at);
        if (line_end != std::string_view::npos && line.ends_with('\r')) {
            line.remove_suffix(1);
        }
        result += line;
        if (line_end == std::string_view::npos) {
            break;
        }
        result += end;
        at = line_end + 1;
    }
    return result;
}

} // namespace

std::string page_text(std::string_view file_text) {
    if (file_text.starts_with(byte_order_mark)) {
        file_text.remove_prefix(byte_order_mark.size());
    }
    return with_ends(file_text, "\n");
}

std::string file_text(std::string_view page_text, std::string_view before) {
    const bool has_mark = before.starts_with(byte_order_mark);
    const bool has_returns = before.find("\r\n") != std::string_view::npos;
    return std::string{has_mark ? byte_order_mark : ""} +
           with_ends(page_text, has_returns ? "\r\n" : "\n");
}

std::string etag_of(const std::optional<std::string>& file_text) {
    // Twice with other beginnings: no protection against whoever wants two texts to be taken for
    // one, and none is needed among a cook's own files.
    return file_text ? fmt::format("\"{:x}-{:016x}{:016x}\"", file_text->size(),
                                   kitchen::fnv_1a(*file_text),
                                   kitchen::fnv_1a(*file_text, 0x9AE16A3B2F90404FU))
                     : "\"none\"";
}

} // namespace thawslip::desk
