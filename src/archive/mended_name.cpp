#include "archive/mended_name.h"

#include "kitchen/allergens/allergens.h"

#include <algorithm>
#include <string>
#include <vector>

namespace thawslip::archive {
namespace {

constexpr std::size_t fewest_letters = 4;

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ||
           static_cast<unsigned char>(c) >= 0x80;
}

std::vector<std::string_view> words_in(std::string_view text) {
    std::vector<std::string_view> words;
    std::size_t start = 0;
    for (std::size_t i = 0; i <= text.size(); ++i) {
        const bool in_word =
            i < text.size() && (is_letter(text[i]) || (text[i] >= '0' && text[i] <= '9'));
        if (!in_word) {
            if (i > start) {
                words.push_back(text.substr(start, i - start));
            }
            start = i + 1;
        }
    }
    return words;
}

bool is_swapped(std::string_view a, std::string_view b) {
    const auto [here, there] = std::ranges::mismatch(a, b);
    const auto at = static_cast<std::size_t>(here - a.begin());
    return a.size() == b.size() && at + 1 < a.size() && a[at] == b[at + 1] && a[at + 1] == b[at] &&
           a.substr(at + 2) == b.substr(at + 2);
}

/// Whether `longer` is `shorter` with one letter written twice.
bool is_doubled(std::string_view shorter, std::string_view longer) {
    const auto at =
        static_cast<std::size_t>(std::ranges::mismatch(shorter, longer).in1 - shorter.begin());
    return longer.size() == shorter.size() + 1 && at > 0 && longer[at] == longer[at - 1] &&
           shorter.substr(at) == longer.substr(at + 1);
}

/// Whether one of two words names an allergen that the other does not: "sole", "sloe".
bool name_other_allergens(std::string_view a, std::string_view b) {
    const auto of_a = kitchen::mentioned_allergens(a);
    const auto of_b = kitchen::mentioned_allergens(b);
    return !std::ranges::equal(of_a, of_b, {}, &kitchen::AllergenMention::named,
                               &kitchen::AllergenMention::named);
}

bool is_slip(std::string_view a, std::string_view b) {
    return std::min(a.size(), b.size()) >= fewest_letters && a.front() == b.front() &&
           std::ranges::all_of(a, is_letter) && std::ranges::all_of(b, is_letter) &&
           (is_swapped(a, b) || is_doubled(a, b) || is_doubled(b, a)) &&
           !name_other_allergens(a, b);
}

} // namespace

bool is_mended_name(std::string_view before, std::string_view now) {
    const auto old_words = words_in(before);
    const auto new_words = words_in(now);
    if (old_words.size() != new_words.size()) {
        return false;
    }
    int slips = 0;
    for (std::size_t i = 0; i < old_words.size(); ++i) {
        if (old_words[i] != new_words[i]) {
            if (!is_slip(old_words[i], new_words[i])) {
                return false;
            }
            ++slips;
        }
    }
    return slips <= 1;
}

} // namespace thawslip::archive
