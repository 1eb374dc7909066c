#include "kitchen/texts/phrases.h"

#include "kitchen/texts/text.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

std::vector<std::string> singulars(const std::vector<std::string>& words) {
    std::vector<std::string> result;
    result.reserve(words.size());
    for (const auto& word : words) {
        result.push_back(singular(word));
    }
    return result;
}

bool stands_at(const std::vector<std::string>& phrase, const std::vector<std::string>& words,
               std::size_t place) {
    return place + phrase.size() <= words.size() &&
           std::equal(phrase.begin(), phrase.end(),
                      words.begin() + static_cast<std::ptrdiff_t>(place));
}

} // namespace

PhraseBook::PhraseBook(const std::vector<std::string_view>& phrases) {
    for (std::size_t i = 0; i < phrases.size(); ++i) {
        auto words = singulars(words_of(phrases[i]));
        if (!words.empty()) {
            auto first = words.front();
            by_first_word_[std::move(first)].push_back({std::move(words), i});
        }
    }
}

PhraseMatch PhraseBook::longest_at(const std::vector<std::string>& text, std::size_t place) const {
    PhraseMatch longest{place, 0, {}};
    const auto candidates = by_first_word_.find(text[place]);
    if (candidates == by_first_word_.end()) {
        return longest;
    }
    for (const auto& entry : candidates->second) {
        if (entry.words.size() < longest.count || !stands_at(entry.words, text, place)) {
            continue;
        }
        if (entry.words.size() > longest.count) {
            longest = {place, entry.words.size(), {}};
        }
        longest.entries.push_back(entry.position);
    }
    return longest;
}

std::vector<PhraseMatch> PhraseBook::find(const std::vector<std::string>& words) const {
    const auto text = singulars(words);
    std::vector<PhraseMatch> matches;
    for (std::size_t place = 0; place < text.size();) {
        auto match = longest_at(text, place);
        place += std::max<std::size_t>(match.count, 1);
        if (match.count > 0) {
            matches.push_back(std::move(match));
        }
    }
    return matches;
}

std::string joined(const std::vector<std::string>& words, std::size_t first, std::size_t count) {
    std::string text;
    for (std::size_t i = first; i < first + count; ++i) {
        text += (text.empty() ? "" : " ") + words[i];
    }
    return text;
}

} // namespace thawslip::kitchen
