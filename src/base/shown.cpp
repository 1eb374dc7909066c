#include "base/shown.h"

#include "base/character.h"
#include "base/utf8.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip {
namespace {

bool must_not_be_shown(char32_t c) {
    const bool moves_on = c == '\n' || c == '\t';
    return !moves_on && (is_control(c) || is_line_break(c) || turns_direction(c));
}

std::string shown_utf8(std::string_view text) {
    std::string safe;
    for (std::size_t at = 0; at < text.size();) {
        const auto start = at;
        const char32_t c = next_code_point(text, at);
        safe += must_not_be_shown(c) ? fmt::format("\\u{:04x}", static_cast<std::uint32_t>(c))
                                     : std::string{text.substr(start, at - start)};
    }
    return safe;
}

/// Most of what is shown is plain: looked at byte by byte, it needs no copy of its own.
bool is_plain(std::string_view text) {
    return std::ranges::all_of(
        text, [](char c) { return (c >= 0x20 && c < 0x7F) || c == '\n' || c == '\t'; });
}

/// How many bytes a code point has that begins with this one; 1 for what begins none.
std::size_t length_by_first(char first) {
    const auto byte = static_cast<unsigned char>(first);
    return byte >= 0xF0 ? 4 : byte >= 0xE0 ? 3 : byte >= 0xC2 ? 2 : 1;
}

} // namespace

std::string shown(std::string_view text) {
    if (is_plain(text)) {
        return std::string{text};
    }
    std::string safe;
    while (const auto bad = first_invalid_utf8(text)) {
        safe += shown_utf8(text.substr(0, *bad)) + "\uFFFD";
        text.remove_prefix(*bad + 1);
    }
    return safe + shown_utf8(text);
}

bool is_shown_line(std::string_view text) {
    return text.find_first_of("\t\n") == std::string_view::npos && shown(text) == text;
}

std::size_t unfinished_utf8(std::string_view text) {
    constexpr std::size_t longest = 4;
    for (std::size_t back = 1; back <= std::min(longest, text.size()); ++back) {
        const char c = text[text.size() - back];
        const bool continues = (static_cast<unsigned char>(c) & 0xC0U) == 0x80U;
        if (!continues) {
            return length_by_first(c) > back ? back : 0;
        }
    }
    return 0;
}

} // namespace thawslip
