#include "wording/look_alikes.h"

#include "base/letters.h"

#include <algorithm>
#include <sstream>

namespace thawslip::wording {
namespace {

using Words = std::vector<std::string>;

constexpr std::size_t longest_idle_word = 3; // "and", "mit", "con"

/// A name's words as written.
Words words_of(std::string_view name) {
    std::istringstream in{std::string{name}};
    Words words;
    for (std::string word; in >> word;) {
        words.push_back(word);
    }
    return words;
}

/// A word by which names are compared: without a comma at its end, in small letters.
std::string key_of_word(std::string word) {
    while (!word.empty() && (word.back() == ',' || word.back() == '.')) {
        word.pop_back();
    }
    return lower(word);
}

/// The words of a name that count.
Words keys_of(std::string_view name) {
    Words keys;
    for (const auto& word : words_of(name)) {
        if (const auto key = key_of_word(word); key.size() > longest_idle_word) {
            keys.push_back(key);
        }
    }
    return keys;
}

bool has(const Words& words, const std::string& word) {
    return std::ranges::find(words, word) != words.end();
}

bool opens_or_ends_with_one_of(const Words& name, const Words& other) {
    return has(other, name.front()) || has(other, name.back());
}

bool look_alike(const Words& a, const Words& b) {
    if (a.empty() || b.empty()) {
        return false;
    }
    const auto shared = std::ranges::count_if(a, [&b](const auto& word) { return has(b, word); });
    return 2 * shared >= std::ssize(a.size() < b.size() ? a : b) &&
           (opens_or_ends_with_one_of(a, b) || opens_or_ends_with_one_of(b, a));
}

} // namespace

std::vector<Span> told_apart(std::string_view dish, const std::vector<std::string>& others) {
    const auto own = keys_of(dish);
    std::vector<Words> alike;
    for (const auto& other : others) {
        if (auto keys = keys_of(other); look_alike(own, keys)) {
            alike.push_back(std::move(keys));
        }
    }
    const auto differs = [&](const std::string& word) {
        const auto key = key_of_word(word);
        return key.size() > longest_idle_word &&
               std::ranges::any_of(alike, [&](const auto& keys) { return !has(keys, key); });
    };
    const auto words = words_of(dish);
    if (std::ranges::none_of(words, differs)) {
        return {{std::string{dish}, Emphasis::Plain}};
    }
    std::vector<Span> spans;
    for (const auto& word : words) {
        const auto emphasis = differs(word) ? Emphasis::Strong : Emphasis::Plain;
        const std::string gap = spans.empty() ? "" : " ";
        if (!spans.empty() && spans.back().emphasis == emphasis) {
            spans.back().text += gap + word;
        } else {
            spans.push_back({gap + word, emphasis});
        }
    }
    return spans;
}

} // namespace thawslip::wording
