#include "toml/mend.h"

#include "toml/outline.h"
#include "toml/position.h"

#include <algorithm>
#include <string_view>

namespace thawslip::toml {
namespace {

struct Line {
    std::size_t begin = 0;
    std::size_t end = 0; ///< at the line end, or at the end of the text
};

Line line_at(std::string_view text, std::size_t offset) {
    const auto at = std::min(offset, text.size());
    const auto begin = text.substr(0, at).rfind('\n') + 1; // npos + 1 is 0
    return {begin, std::min(text.find_first_of("\r\n", at), text.size())};
}

/// Where the `=` of a line with a plain key stands; a quoted key is left to its own mistakes.
std::optional<std::size_t> equals_in(std::string_view text, Line line) {
    const auto at = text.find('=', line.begin);
    if (at == std::string_view::npos || at >= line.end) {
        return std::nullopt;
    }
    const auto key = text.substr(line.begin, at - line.begin);
    return key.find_first_of("[]{}\"'#") == std::string_view::npos ? std::optional{at}
                                                                   : std::nullopt;
}

/// Whether a text that lacks its closing quote ends with its line, and does not go on in the next.
bool text_ends_with_its_line(std::string_view text, Line line, std::size_t open) {
    const auto quotes = text.substr(open, 3);
    if (quotes == "\"\"\"" || quotes == "'''" || text[line.end - 1] == '\\') {
        return false;
    }
    const auto next = line_at(text, std::min(text.find('\n', line.end), text.size() - 1) + 1);
    const auto begin = text.begin() + static_cast<std::ptrdiff_t>(next.begin);
    const auto end = text.begin() + static_cast<std::ptrdiff_t>(next.end);
    return next.begin <= line.begin || std::count(begin, end, text[open]) % 2 == 0;
}

/// Whether all that the line opens ends with it.
bool ends_with_its_line(std::string_view text, Line line) {
    const auto length = line.end - line.begin;
    const auto at_end = outline(text.substr(line.begin, length), length, length);
    if (!at_end.open_brackets.empty()) {
        return false;
    }
    return !at_end.open_string ||
           text_ends_with_its_line(text, line, line.begin + *at_end.open_string);
}

} // namespace

std::optional<std::uint32_t> mend_line(std::string& text, std::size_t culprit, Spoilt spoilt) {
    const auto line = line_at(text, culprit);
    const auto equals = equals_in(text, line);
    const auto before = outline(text, line.begin, text.size());
    const bool stands_free = before.open_brackets.empty() && !before.open_string;
    if (!equals || !stands_free || !ends_with_its_line(text, line)) {
        return std::nullopt;
    }
    const auto number = position_of(text, line.begin).line;
    if (spoilt == Spoilt::Line && culprit < *equals) {
        text.erase(line.begin, line.end - line.begin);
        return number;
    }
    if (culprit <= *equals) {
        return std::nullopt;
    }
    const auto value = *equals + 1;
    text.erase(value, line.end - value).insert(value, 1, '0');
    return number;
}

} // namespace thawslip::toml
