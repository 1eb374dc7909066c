#include "toml/position.h"

#include "base/utf8.h"

#include <algorithm>

namespace thawslip::toml {
namespace {

bool continues(char byte) {
    return (static_cast<unsigned char>(byte) & 0xC0U) == 0x80U;
}

} // namespace

std::size_t offset_of(std::string_view text, Position position) {
    std::size_t offset = 0;
    for (std::uint32_t line = 1; line < position.line; ++line) {
        const auto end = text.find('\n', offset);
        if (end == std::string_view::npos) {
            return text.size();
        }
        offset = end + 1;
    }
    for (std::uint32_t column = 1; column < position.column; ++column) {
        if (offset >= text.size() || text[offset] == '\n') {
            break;
        }
        do {
            ++offset;
        } while (offset < text.size() && continues(text[offset]));
    }
    return offset;
}

Position position_of(std::string_view text, std::size_t offset) {
    const auto before = text.substr(0, std::min(offset, text.size()));
    const auto line_start = before.rfind('\n') + 1; // npos + 1 is 0
    return {static_cast<std::uint32_t>(std::ranges::count(before, '\n') + 1),
            static_cast<std::uint32_t>(count_code_points(before.substr(line_start)) + 1)};
}

} // namespace thawslip::toml
