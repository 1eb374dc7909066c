#include "wording/typography.h"

#include "base/letters.h"
#include "base/utf8.h"

#include <algorithm>
#include <iterator>
#include <optional>

namespace thawslip::wording {
namespace {

bool is_letter(char32_t c) {
    return is_latin_letter(c) || c >= 0xC0;
}

/// The code points of a text with a cursor, so that each rule reads as "if this stands here".
class Reader {
public:
    explicit Reader(std::u32string text) : text_{std::move(text)} {}

    bool at_end() const { return at_ >= text_.size(); }
    char32_t peek(std::ptrdiff_t offset = 0) const {
        const auto place = static_cast<std::ptrdiff_t>(at_) + offset;
        return place >= 0 && place < static_cast<std::ptrdiff_t>(text_.size())
                   ? text_[static_cast<std::size_t>(place)]
                   : U'\0';
    }
    void skip(std::size_t count = 1) { at_ += count; }

private:
    std::u32string text_;
    std::size_t at_ = 0;
};

struct VulgarFraction {
    char32_t over;
    char32_t under;
    char32_t character;
};

constexpr VulgarFraction vulgar_fractions[] = {
    {U'1', U'2', U'½'}, {U'1', U'3', U'⅓'}, {U'2', U'3', U'⅔'}, {U'1', U'4', U'¼'},
    {U'3', U'4', U'¾'}, {U'1', U'5', U'⅕'}, {U'2', U'5', U'⅖'}, {U'1', U'8', U'⅛'},
    {U'3', U'8', U'⅜'}, {U'5', U'8', U'⅝'}, {U'7', U'8', U'⅞'}, {U'1', U'6', U'⅙'},
};

std::optional<char32_t> fraction_at(const Reader& in) {
    if (in.peek(1) != U'/' || is_digit(in.peek(3)) || is_digit(in.peek(-1)) ||
        in.peek(-1) == U'/' || in.peek(3) == U'/') {
        return std::nullopt;
    }
    const auto* found = std::ranges::find_if(vulgar_fractions, [&in](const VulgarFraction& f) {
        return f.over == in.peek() && f.under == in.peek(2);
    });
    return found == std::end(vulgar_fractions) ? std::nullopt : std::optional{found->character};
}

/// "1 1/2" is one number: the space before a fraction goes.
bool joins_fraction(const Reader& in, const std::u32string& out) {
    if (in.peek() != U' ' || out.empty() || !is_digit(out.back())) {
        return false;
    }
    Reader ahead = in;
    ahead.skip();
    return is_digit(ahead.peek()) && fraction_at(ahead).has_value();
}

/// "7-9", but not the dashes of 2026-10-17: a range has two ends, not three.
bool is_range_dash(const Reader& in) {
    if (in.peek() != U'-' || !is_digit(in.peek(-1)) || !is_digit(in.peek(1))) {
        return false;
    }
    std::ptrdiff_t left = -1;
    while (is_digit(in.peek(left))) {
        --left;
    }
    std::ptrdiff_t right = 1;
    while (is_digit(in.peek(right))) {
        ++right;
    }
    const bool chained = (in.peek(left) == U'-' && is_digit(in.peek(left - 1))) ||
                         (in.peek(right) == U'-' && is_digit(in.peek(right + 1)));
    return !chained;
}

bool is_times(const Reader& in) {
    return in.peek() == U'x' && in.peek(-1) == U' ' && is_digit(in.peek(-2)) &&
           in.peek(1) == U' ' && is_digit(in.peek(2));
}

/// "74 C", "165F": a temperature written without its degree sign.
bool is_bare_degree(const Reader& in) {
    const bool scale = in.peek() == U'C' || in.peek() == U'F';
    const bool after_number =
        is_digit(in.peek(-1)) || (in.peek(-1) == U' ' && is_digit(in.peek(-2)));
    return scale && after_number && !is_letter(in.peek(1)) && !is_digit(in.peek(1));
}

char32_t curly(char32_t quote, char32_t before) {
    const bool opens = before == U'\0' || before == U' ' || before == U'(';
    if (quote == U'"') {
        return opens ? U'“' : U'”';
    }
    return opens ? U'‘' : U'’';
}

} // namespace

std::string typeset_text(std::string_view text) {
    Reader in{to_utf32(text)};
    std::u32string out;
    while (!in.at_end()) {
        if (joins_fraction(in, out)) {
            in.skip();
        } else if (const auto fraction = fraction_at(in)) {
            out += *fraction;
            in.skip(3);
        } else if (is_range_dash(in)) {
            out += U'–';
            in.skip();
        } else if (is_times(in)) {
            out += U'×';
            in.skip();
        } else if (is_bare_degree(in)) {
            out += in.peek(-1) == U' ' ? U"°" : U" °";
            out += in.peek();
            in.skip();
        } else if (in.peek() == U'"' || in.peek() == U'\'') {
            out += curly(in.peek(), in.peek(-1));
            in.skip();
        } else if (in.peek() == U'.' && in.peek(1) == U'.' && in.peek(2) == U'.') {
            out += U'…';
            in.skip(3);
        } else {
            out += in.peek();
            in.skip();
        }
    }
    return to_utf8(out);
}

std::string unbroken(std::string_view text) {
    std::string joined;
    for (const char c : text) {
        joined += c;
        if (c == '-') {
            append_utf8(joined, U'\u2060');
        }
    }
    return joined;
}

std::string with_no_break_spaces(std::string_view text) {
    std::string joined;
    for (const char c : text) {
        if (c == ' ') {
            append_utf8(joined, U'\u00A0');
        } else {
            joined += c;
        }
    }
    return joined;
}

std::string_view between(const std::vector<std::string>& things) {
    const bool has_commas = std::ranges::any_of(
        things, [](const std::string& thing) { return thing.find(", ") != std::string::npos; });
    return has_commas ? "; " : ", ";
}

std::string capitalised(std::string_view text) {
    if (text.empty()) {
        return {};
    }
    auto points = to_utf32(text);
    const char32_t first = points.front();
    const bool ascii = first >= U'a' && first <= U'z';
    const bool latin1 = first >= 0xE0 && first <= 0xFE && first != 0xF7;
    const bool greek = first >= 0x3B1 && first <= 0x3C9 && first != 0x3C2;
    const bool cyrillic = first >= 0x430 && first <= 0x44F;
    if (ascii || latin1 || greek || cyrillic) {
        points.front() = first - 0x20;
    }
    return to_utf8(points);
}

} // namespace thawslip::wording
