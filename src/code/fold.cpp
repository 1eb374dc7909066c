#include "code/fold.h"

#include "base/letters.h"
#include "base/utf8.h"
#include "unicode/ascii.h"

#include <algorithm>
#include <cstddef>

namespace thawslip::code {
namespace {

constexpr std::size_t longest_digit_group = 6; ///< 7 digits are what phones offer to dial

char at(std::string_view text, std::size_t i) {
    return i < text.size() ? text[i] : ' ';
}

/// Is there a digit on both sides of position `i`, spaces left out of account?
bool between_digits(std::string_view text, std::size_t i) {
    const std::size_t before = text.find_last_not_of(' ', i == 0 ? std::string_view::npos : i - 1);
    const std::size_t after = text.find_first_not_of(' ', i + 1);
    return i > 0 && before != std::string_view::npos && is_digit(text[before]) &&
           after != std::string_view::npos && is_digit(text[after]);
}

bool touches_digits(std::string_view text, std::size_t i) {
    return i > 0 && is_digit(text[i - 1]) && is_digit(at(text, i + 1));
}

/// What stands for one character that is neither letter, digit nor space.
std::string replacement(std::string_view text, std::size_t i) {
    switch (text[i]) {
    case '$':
    case '%':
    case '+':
    case '-':
    case '.':
    case '/': return std::string(1, text[i]);
    case ':':
    case ',': return touches_digits(text, i) ? std::string(1, text[i]) : " - ";
    case ';':
    case '(':
    case ')':
    case '[':
    case ']':
    case '{':
    case '}':
    case '<':
    case '>':
    case '|':
    case '=': return " - ";
    case '!':
    case '?': return ".";
    case '\\': return "/";
    case '&': return " AND ";
    case '@': return " AT ";
    case '#': return " NO ";
    case '*': return between_digits(text, i) ? " X " : " ";
    case '\'':
    case '"':
    case '`':
    case '^': return "";
    default: return " "; // controls, `_`, `~`, and bytes that are not ASCII
    }
}

std::string to_code_characters(std::string_view words) {
    std::string folded;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const char c = to_upper(words[i]);
        folded += is_upper(c) || is_digit(c) ? std::string(1, c) : replacement(words, i);
    }
    return folded;
}

/// `word18:` is a scheme as much as `word:` is (RFC 3986, 3.1): such a colon becomes a pause.
std::string part_schemes(std::string_view text) {
    std::string parted;
    for (const char c : text) {
        if (c != ':') {
            parted += c;
            continue;
        }
        std::size_t start = parted.size();
        bool letters = false;
        for (; start > 0 &&
               std::string_view{" /:,$%"}.find(parted[start - 1]) == std::string_view::npos;
             --start) {
            letters = letters || is_upper(parted[start - 1]);
        }
        parted += letters ? " - " : ":";
    }
    return parted;
}

/// `a.b` before a letter and `//` are halves of an address: part them.
std::string part_addresses(std::string_view text) {
    std::string parted;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (text[i] == '/' && !parted.empty() && parted.back() == '/') {
            continue;
        }
        parted += text[i];
        if (text[i] == '.' && is_upper(at(text, i + 1))) {
            parted += ' ';
        }
    }
    return parted;
}

/// The end of the run that starts with the digit at `begin` and that a phone may take for one
/// number: digits, with spaces, dots, hyphens and plus signs between them.
std::size_t end_of_number(std::string_view text, std::size_t begin, std::size_t& digits) {
    std::size_t end = begin;
    digits = 0;
    for (std::size_t i = begin; i < text.size(); ++i) {
        if (is_digit(text[i])) {
            ++digits;
            end = i + 1;
        } else if (std::string_view{" .-+"}.find(text[i]) == std::string_view::npos) {
            break;
        }
    }
    return end;
}

/// Digits in groups of at most three, with strokes between, so that nothing offers to dial them.
std::string with_strokes(std::string_view number) {
    std::string parted;
    std::size_t group = 0;
    bool gap = false;
    for (const char c : number) {
        if (!is_digit(c)) {
            gap = true;
            continue;
        }
        if (!parted.empty() && (gap || group == 3)) {
            parted += " / ";
            group = 0;
        }
        parted += c;
        ++group;
        gap = false;
    }
    return parted;
}

std::string part_numbers(std::string_view text) {
    std::string parted;
    for (std::size_t i = 0; i < text.size();) {
        if (!is_digit(text[i])) {
            parted += text[i++];
            continue;
        }
        std::size_t digits = 0;
        const std::size_t end = end_of_number(text, i, digits);
        const std::string_view number = text.substr(i, end - i);
        parted += digits > longest_digit_group ? with_strokes(number) : std::string{number};
        i = end;
    }
    return parted;
}

/// One space where there were several, one pause (` - `) where there were several.
std::string collapse(std::string_view text) {
    std::string tidy;
    for (const char c : text) {
        if (c == ' ' && (tidy.empty() || tidy.back() == ' ')) {
            continue;
        }
        tidy += c;
        while (tidy.size() >= 4 && tidy.ends_with("- - ")) {
            tidy.resize(tidy.size() - 2);
        }
    }
    return tidy;
}

/// Without pauses and spaces at either end, and without a full stop at the end. A minus before a
/// number stays.
std::string trim(std::string text) {
    while (text.ends_with(' ') || text.ends_with('.') || text.ends_with(" -")) {
        text.pop_back();
    }
    while (text.starts_with(' ') || text.starts_with("- ") || text == "-") {
        text.erase(0, 1);
    }
    return text;
}

} // namespace

std::string fold(std::string_view words) {
    // Bytes that are not UTF-8 go one by one, as blanks.
    const std::string ascii =
        first_invalid_utf8(words) ? std::string{words} : unicode::to_ascii(words);
    const std::string characters = to_code_characters(ascii);
    return trim(collapse(part_numbers(part_addresses(part_schemes(characters)))));
}

std::string fold_bag_id(std::string_view id) {
    std::string folded;
    for (const char each : id) {
        const char c = to_upper(each);
        if (is_upper(c) || is_digit(c) || c == '-') {
            folded += c;
        }
    }
    return folded;
}

bool looks_like_a_number_to_dial(std::string_view text) {
    for (std::size_t i = 0; i < text.size();) {
        std::size_t digits = 0;
        i = is_digit(text[i]) ? end_of_number(text, i, digits) : i + 1;
        if (digits > longest_digit_group) {
            return true;
        }
    }
    return false;
}

} // namespace thawslip::code
