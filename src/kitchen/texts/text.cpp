#include "kitchen/texts/text.h"

#include "base/utf8.h"

#include <algorithm>
#include <fmt/format.h>
#include <string_view>

namespace thawslip::kitchen {
namespace {

/// The plain letters for U+00C0 to U+00FF and a few beyond, the ones met in names of food; empty
/// for what is no accented Latin letter.
std::string_view without_accent(char32_t letter) {
    // One entry per code point from U+00C0 on; "" parts words (U+00D7, U+00F7 are × and ÷).
    static constexpr std::string_view latin_1[] = {
        "a", "a", "a", "a", "a", "a", "ae", "c", "e", "e", "e", "e", "i", "i", "i",  "i",
        "d", "n", "o", "o", "o", "o", "o",  "",  "o", "u", "u", "u", "u", "y", "th", "ss"};
    if (letter >= 0xC0 && letter <= 0xFF) {
        return letter == 0xFF ? "y" : latin_1[(letter - 0xC0) % 32];
    }
    if (letter == 0x152 || letter == 0x153) {
        return "oe";
    }
    return {};
}

bool is_dropped(char32_t c) {
    return c == U'\'' || c == 0x2019 || c == 0x00AD; // apostrophes, soft hyphen
}

/// Spaces, punctuation and symbols below the first letters that are not Latin.
bool parts_words(char32_t c) {
    return c < 0x100 || (c >= 0x2000 && c < 0x2C00) || c == 0x3000;
}

void append_letter(std::string& word, char32_t c) {
    if (is_latin_letter(c)) {
        word += to_lower(static_cast<char>(c));
    } else if (const auto plain = without_accent(c); !plain.empty()) {
        word += plain;
    } else {
        append_utf8(word, c);
    }
}

bool is_letter(char32_t c) {
    return is_latin_letter(c) || !without_accent(c).empty() || !parts_words(c);
}

} // namespace

std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> words;
    std::string word;
    if (first_invalid_utf8(text)) {
        return words;
    }
    for (std::size_t offset = 0; offset < text.size();) {
        const auto c = next_code_point(text, offset);
        if (is_letter(c)) {
            append_letter(word, c);
        } else if (!is_dropped(c) && !word.empty()) {
            words.push_back(std::move(word));
            word.clear();
        }
    }
    if (!word.empty()) {
        words.push_back(std::move(word));
    }
    return words;
}

std::vector<std::string> split_at_spaces(std::string_view text) {
    std::vector<std::string> all;
    for (std::size_t first = 0; first < text.size();) {
        const auto end = std::min(text.find(' ', first), text.size());
        all.emplace_back(text.substr(first, end - first));
        first = end + 1;
    }
    return all;
}

std::string decimal(double value, int places, char decimal_mark) {
    auto text = fmt::format("{:.{}f}", value, places);
    if (const auto point = text.find('.'); point != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') {
            text.pop_back();
        } else {
            text[point] = decimal_mark;
        }
    }
    return text == "-0" ? "0" : text;
}

} // namespace thawslip::kitchen
