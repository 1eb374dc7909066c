#include "base/printable.h"
#include "base/utf8.h"
#include "toml/scanner.h"
#include "toml/type_hints.h"

#include <charconv>
#include <fmt/format.h>

namespace thawslip::toml {
namespace {

/// The escapes of one letter, and what they stand for.
constexpr std::string_view short_escapes = "btnfr\"\\";
constexpr std::string_view short_meanings = "\b\t\n\f\r\"\\";

/// Whether a text that lacks its closing quote seems to be closed in this line, its next.
bool closes_text(std::string_view line, char quote) {
    return !line.empty() && line.front() != quote && line.front() != '#' && !begins_again(line) &&
           std::ranges::count(line, quote) % 2 == 1;
}

} // namespace

std::string Scanner::string(bool may_have_lines) {
    const auto open = at_;
    const char quote = text_[at_];
    const std::string triple(3, quote);
    const bool has_lines = may_have_lines && take(triple);
    at_ += has_lines ? 0 : 1;
    std::string text;
    if (has_lines && line_end_in_text(text)) {
        text.clear(); // a line end right after the quotes is none of the text
    }
    while (!ended() && (has_lines || !at_line_end())) {
        if (peek() == quote) {
            if (has_lines ? quotes_end(text, quote) : take(triple.substr(2))) {
                return text;
            }
        } else if (peek() == '\\' && quote == '"') {
            escape(text, has_lines);
        } else if (!line_end_in_text(text)) {
            refuse_control();
            const auto begin = at_;
            at_ = plain_end(begin + 1);
            text += words({begin, at_});
        }
    }
    leave_text_open(open, has_lines ? triple : triple.substr(2));
    return text;
}

/// Quotes inside a text of several lines, of which up to two may stand before the closing three
/// (TOML 1.0, "String"); whether they close it.
bool Scanner::quotes_end(std::string& text, char quote) {
    constexpr std::size_t most = 5;
    const auto after = std::min(text_.find_first_not_of(quote, at_), text_.size());
    const auto count = std::min(after - at_, most);
    const bool closed = count >= 3;
    text.append(closed ? count - 3 : count, quote);
    at_ += count;
    return closed;
}

bool Scanner::line_end_in_text(std::string& text) {
    const bool there = take("\n") || take("\r\n");
    text += there ? "\n" : "";
    return there;
}

void Scanner::escape(std::string& text, bool has_lines) {
    const auto backslash = at_++;
    const char letter = peek();
    if (const auto known = short_escapes.find(letter); known != std::string_view::npos) {
        text += short_meanings[known];
        ++at_;
        return;
    }
    if (letter == 'u' || letter == 'U') {
        code_point(text, backslash, letter == 'u' ? 4 : 8);
        return;
    }
    if (has_lines && at_ < text_.size() && trimmed(words({at_, line_end()})).empty()) {
        at_ = std::min(text_.find_first_not_of(" \t\r\n", at_),
                       text_.size()); // "line ending backslash"
        return;
    }
    if (letter == 'x' || letter == 'e') {
        complain({backslash, backslash + 2},
                 fmt::format("the escape \\{} is not part of TOML 1.0", letter),
                 {fmt::format("TOML 1.1 has it; here write {}",
                              letter == 'e' ? "\\u001b" : "\\u00 and the two digits")});
        return;
    }
    if (at_line_end()) {
        return;
    }
    next_code_point(text_, at_);
    complain({backslash, at_}, in_quotes(words({backslash, at_})) + " is no escape of TOML",
             {"write a backslash twice, or the text in 'single quotes'"});
}

/// `\u00e9`, `\U0001F372`
void Scanner::code_point(std::string& text, std::size_t backslash, std::size_t digits) {
    const auto* begin = text_.data() + backslash + 2;
    const auto* end = begin + std::min(digits, text_.size() - backslash - 2);
    std::uint32_t c = 0;
    const auto read = std::from_chars(begin, end, c, 16);
    at_ = backslash + 2 + static_cast<std::size_t>(read.ptr - begin);
    const bool whole = at_ == backslash + 2 + digits;
    if (whole && c <= 0x10FFFF && (c < 0xD800 || c > 0xDFFF)) {
        append_utf8(text, c);
        return;
    }
    complain({backslash, at_}, in_quotes(words({backslash, at_})) + " is no character of Unicode",
             {"write \\u and four hexadecimal digits, or \\U and eight; not D800 to DFFF"});
}

/// Where something comes that wants a look: a quote, a backslash, a line end, a control character.
std::size_t Scanner::plain_end(std::size_t begin) const {
    const auto rest = text_.substr(begin);
    const auto* special = std::find_if(rest.begin(), rest.end(), [](char c) {
        const auto byte = static_cast<unsigned char>(c);
        return byte < 0x20 || byte == 0x7F || c == '"' || c == '\'' || c == '\\';
    });
    return begin + static_cast<std::size_t>(special - rest.begin());
}

/// Neither a text nor a remark may hold a control character but the tab (TOML 1.0, "Comment").
void Scanner::refuse_control() {
    const auto byte = static_cast<unsigned char>(peek());
    if ((byte < 0x20 && byte != '\t') || byte == 0x7F) {
        complain({at_, at_ + 1},
                 fmt::format("the control character {} is not allowed in TOML", name_of(byte)));
    }
}

/// Goes on in the next line where the text seems to be closed there, after a text of several lines
/// where something new seems to begin, and else where the line ends.
void Scanner::leave_text_open(std::size_t open, std::string_view closing) {
    complain({open, end_of(open, "\r\n")}, "the text that begins here is not closed",
             {fmt::format("put {} at its end", closing)});
    if (closing.size() == 1) {
        const auto next = end_of(at_, "\n");
        const auto line =
            next < text_.size() ? trimmed_stretch(next + 1, end_of(next + 1, "\r\n")) : Stretch{};
        if (closes_text(words(line), closing.front())) {
            at_ = text_.find(closing, line.begin) + 1;
        }
        return;
    }
    for (auto line = end_of(open, "\n"); line < text_.size(); line = end_of(line + 1, "\n")) {
        const auto next = trimmed_stretch(line + 1, end_of(line + 1, "\r\n"));
        if (begins_again(words(next))) {
            at_ = next.begin;
            began_again_ = true;
            return;
        }
    }
    found_.lost = true;
}

} // namespace thawslip::toml
