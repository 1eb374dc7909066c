#include "base/diagnostic.h"

#include "base/split.h"
#include "base/utf8.h"

#include <algorithm>
#include <tuple>

namespace thawslip {
namespace {

std::string_view nth_line(std::string_view source, std::uint32_t line) {
    for (std::uint32_t n = 1; n < line; ++n) {
        take_line(source);
    }
    return take_line(source);
}

std::u32string printable(std::u32string line) {
    std::ranges::replace_if(
        line, [](char32_t c) { return c < 0x20 || (c >= 0x7F && c < 0xA0); }, U' ');
    return line;
}

/// The byte where code point `count` of `line` begins, or its end.
std::size_t byte_of(std::string_view line, std::size_t count) {
    std::size_t at = 0;
    for (; at < line.size() && count > 0; --count) {
        do {
            ++at;
        } while (at < line.size() && (static_cast<unsigned char>(line[at]) & 0xC0U) == 0x80U);
    }
    return at;
}

/// The source line and a mark under the place. Of a long line only a window around the place is
/// shown, and only that is looked at closely: a line can be as long as the file.
std::string quoted_line(const SourceSpan& where, std::string_view source) {
    constexpr std::size_t widest = 92;
    auto line = nth_line(source, where.line);
    if (line.empty() || where.column == 0) {
        return {};
    }
    std::size_t mark = where.column - 1;
    if (byte_of(line, widest) < line.size()) {
        const std::size_t start = mark > widest / 2 ? mark - widest / 2 : 0;
        line.remove_prefix(byte_of(line, start));
        line = line.substr(0, byte_of(line, widest));
        mark -= start;
    }
    if (first_invalid_utf8(line)) {
        return {};
    }
    const auto shown = printable(to_utf32(line));
    if (mark > shown.size()) {
        return {};
    }
    const std::size_t room = std::max<std::size_t>(shown.size() - mark, 1);
    const std::size_t length = std::clamp<std::size_t>(where.length, 1, room);
    return "    " + to_utf8(shown) + "\n    " + std::string(mark, ' ') + "^" +
           std::string(length - 1, '~') + "\n";
}

std::string place(const SourceSpan& where) {
    std::string text = where.file;
    if (where.line > 0) {
        text += ":" + std::to_string(where.line);
        if (where.column > 0) {
            text += ":" + std::to_string(where.column);
        }
    }
    return text.empty() ? text : text + ": ";
}

} // namespace

std::string_view severity_word(Severity severity) {
    switch (severity) {
    case Severity::Error: return "error";
    case Severity::Caution: return "caution";
    case Severity::Note: return "note";
    }
    return "error";
}

bool has_errors(const Diagnostics& diagnostics) {
    return std::ranges::any_of(diagnostics,
                               [](const auto& d) { return d.severity == Severity::Error; });
}

void sort_by_place(Diagnostics& diagnostics) {
    std::ranges::stable_sort(diagnostics, {}, [](const Diagnostic& d) {
        return std::tie(d.where.file, d.where.line, d.where.column);
    });
}

std::string to_text(const Diagnostic& diagnostic, std::string_view source) {
    std::string text = place(diagnostic.where);
    text += std::string{severity_word(diagnostic.severity)} + ": " + diagnostic.message + "\n";
    if (diagnostic.where.line > 0) {
        text += quoted_line(diagnostic.where, source);
    }
    for (const auto& hint : diagnostic.hints) {
        text += "    hint: " + hint + "\n";
    }
    return text;
}

} // namespace thawslip
