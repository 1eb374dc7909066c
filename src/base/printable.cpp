#include "base/printable.h"

#include "base/character.h"
#include "base/utf8.h"

namespace thawslip {
namespace {

bool is_unsafe(char32_t c) {
    return is_control(c) || is_line_break(c) || turns_direction(c);
}

} // namespace

std::string printable(std::string_view text) {
    std::string safe;
    for (std::size_t offset = 0; offset < text.size();) {
        const auto bad = first_invalid_utf8(text.substr(offset));
        const auto end = bad ? offset + *bad : text.size();
        while (offset < end) {
            const char32_t c = next_code_point(text, offset);
            append_utf8(safe, is_unsafe(c) ? char32_t{0xFFFD} : c);
        }
        if (bad) {
            append_utf8(safe, 0xFFFD);
            ++offset;
        }
    }
    return safe;
}

std::string in_quotes(std::string_view text) {
    constexpr std::size_t most = 40;
    constexpr std::size_t most_bytes = most * 4 + 4;
    const auto points = to_utf32(printable(text.substr(0, most_bytes)));
    const bool cut = points.size() > most || text.size() > most_bytes;
    return "\"" + to_utf8(points.substr(0, most)) + (cut ? "…\"" : "\"");
}

} // namespace thawslip
