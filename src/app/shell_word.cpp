#include "app/shell_word.h"

#include "base/letters.h"

#include <algorithm>
#include <string_view>

namespace thawslip::app {

std::string shell_word(const std::string& word) {
    constexpr std::string_view harmless = "/._-+,:@%";
    const bool is_plain = !word.empty() && std::ranges::all_of(word, [&](char c) {
        return is_letter_or_digit(c) || static_cast<unsigned char>(c) >= 0x80 ||
               harmless.find(c) != std::string_view::npos;
    });
    if (is_plain) {
        return word;
    }
    std::string safe = "'";
    for (const char c : word) {
        safe += c == '\'' ? std::string{"'\\''"} : std::string{c};
    }
    return safe + "'";
}

} // namespace thawslip::app
