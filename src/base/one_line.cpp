#include "base/one_line.h"

#include "base/character.h"
#include "base/utf8.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip {
namespace {

/// Why a character cannot be printed in a line; empty where it can.
std::string objection(char32_t c) {
    if (is_line_break(c)) {
        return "must be one line: here is a line break";
    }
    if (is_control(c)) {
        return fmt::format("holds the control character {}, which cannot be printed", name_of(c));
    }
    if (turns_direction(c)) {
        return fmt::format("holds U+{:04X}, which turns the direction of writing round",
                           static_cast<std::uint32_t>(c));
    }
    return {};
}

} // namespace

Result<std::string, TextFault> one_line(std::string_view text, std::size_t most) {
    if (const auto bad = first_invalid_utf8(text)) {
        return Failure{TextFault{*bad, "is not UTF-8"}};
    }
    std::size_t first = text.size();
    std::size_t last = 0;
    for (std::size_t offset = 0; offset < text.size();) {
        const auto start = offset;
        if (!leaves_no_mark(next_code_point(text, offset))) {
            first = std::min(first, start);
            last = offset;
        }
    }
    if (first >= last) {
        return Failure{TextFault{0, "is empty"}};
    }
    const auto line = text.substr(first, last - first);
    for (std::size_t offset = 0; offset < line.size();) {
        const auto start = offset;
        const auto message = objection(next_code_point(line, offset));
        if (!message.empty()) {
            return Failure{TextFault{first + start, message}};
        }
    }
    if (const auto length = count_code_points(line); length > most) {
        return Failure{TextFault{
            first, fmt::format("is {} characters long, at most {} are taken", length, most)}};
    }
    return std::string{line};
}

} // namespace thawslip
