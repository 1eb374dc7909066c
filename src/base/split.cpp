#include "base/split.h"

#include "base/letters.h"

#include <algorithm>

namespace thawslip {

std::string_view trimmed(std::string_view text) {
    constexpr std::string_view blanks = " \t\r\n";
    const auto first = text.find_first_not_of(blanks);
    return first == std::string_view::npos
               ? std::string_view{}
               : text.substr(first, text.find_last_not_of(blanks) + 1 - first);
}

std::vector<std::string> split(std::string_view text, std::string_view marks) {
    std::vector<std::string> pieces;
    for (auto at = text.find_first_not_of(marks); at != std::string_view::npos;) {
        const auto end = std::min(text.find_first_of(marks, at), text.size());
        pieces.emplace_back(text.substr(at, end - at));
        at = text.find_first_not_of(marks, end);
    }
    return pieces;
}

std::vector<std::string> parts_between_commas(std::string_view text) {
    auto parts = split(text, ",");
    for (auto& part : parts) {
        part = std::string{trimmed(part)};
    }
    std::erase(parts, std::string{});
    return parts;
}

std::vector<std::string> searchable_words(std::string_view text) {
    std::vector<std::string> words;
    bool is_inside = false;
    for (const char c : text) {
        if (is_of_word(c)) {
            if (!is_inside) {
                words.emplace_back();
            }
            words.back() += c;
        }
        is_inside = is_of_word(c);
    }
    return words;
}

std::string_view take_line(std::string_view& text) {
    const auto line = text.substr(0, text.find('\n'));
    text.remove_prefix(std::min(line.size() + 1, text.size()));
    return line;
}

std::vector<std::string> lines_in(std::string_view text) {
    std::vector<std::string> lines;
    while (!text.empty()) {
        lines.emplace_back(take_line(text));
    }
    return lines;
}

} // namespace thawslip
