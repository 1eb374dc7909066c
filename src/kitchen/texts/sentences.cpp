#include "kitchen/texts/sentences.h"

#include "base/number_in.h"
#include "kitchen/texts/negation.h"

#include <algorithm>
#include <string>

namespace thawslip::kitchen {
namespace {

bool ends_sentence(std::string_view text, std::size_t at) {
    constexpr std::string_view always = ";!?\n";
    return always.find(text[at]) != std::string_view::npos ||
           (text[at] == '.' && (at + 1 == text.size() || text[at + 1] == ' '));
}

} // namespace

std::vector<WordedText> sentences(std::string_view text) {
    std::vector<WordedText> all;
    std::size_t first = 0;
    for (std::size_t at = 0; at <= text.size(); ++at) {
        if (at == text.size() || ends_sentence(text, at)) {
            auto sentence = worded(text.substr(first, at - first));
            first = at + 1;
            if (!sentence.words.empty()) {
                all.push_back(std::move(sentence));
            }
        }
    }
    return all;
}

bool clause_says(const WordedText& text, std::size_t word, Section section,
                 std::string_view meaning) {
    const auto clauses = clauses_of(text);
    return std::ranges::any_of(mentions(text, section, meaning), [&](const Mention& mention) {
        return clauses[mention.first] == clauses[word];
    });
}

std::optional<double> number_at(const WordedText& text, std::size_t word) {
    if (word >= text.words.size()) {
        return std::nullopt;
    }
    auto digits = text.words[word];
    std::ranges::replace(digits, ',', '.');
    return number_in<double>(digits);
}

} // namespace thawslip::kitchen
