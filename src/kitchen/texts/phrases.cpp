#include "kitchen/texts/phrases.h"

#include "base/list.h"
#include "kitchen/texts/inflection.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <span>
#include <utility>

namespace thawslip::kitchen {
namespace {

bool stands_at(const std::vector<std::string>& phrase, const std::vector<std::string>& words,
               std::size_t place) {
    return place + phrase.size() <= words.size() &&
           std::equal(phrase.begin(), phrase.end(),
                      words.begin() + static_cast<std::ptrdiff_t>(place));
}

} // namespace

void PhraseBook::add(const LexiconRow& row) {
    auto words = mapped(split_at_spaces(row.words), singular);
    auto first = words.front();
    by_first_word_[std::move(first)].push_back({std::move(words), row.meaning});
}

PhraseMatch PhraseBook::longest_at(const std::vector<std::string>& text, std::size_t place) const {
    PhraseMatch longest{place, 0, {}};
    const auto candidates = by_first_word_.find(text[place]);
    if (candidates == by_first_word_.end()) {
        return longest;
    }
    for (const auto& entry : candidates->second) {
        if (entry.words.size() > longest.count && stands_at(entry.words, text, place)) {
            longest = {place, entry.words.size(), entry.meaning};
        }
    }
    return longest;
}

std::vector<PhraseMatch> PhraseBook::find(const std::vector<std::string>& words) const {
    const auto text = mapped(words, singular);
    std::vector<PhraseMatch> matches;
    for (std::size_t place = 0; place < text.size();) {
        const auto match = longest_at(text, place);
        place += std::max<std::size_t>(match.count, 1);
        if (match.count > 0) {
            matches.push_back(match);
        }
    }
    return matches;
}

namespace {

/// A book of each section and meaning; of meat one for all.
std::map<std::pair<Section, std::string_view>, PhraseBook> books_of_phrases() {
    std::map<std::pair<Section, std::string_view>, PhraseBook> books;
    for (const auto& file : lexicon_files()) {
        for (const auto& row : file.rows) {
            const bool together = row.section == Section::Meat;
            if (row.section >= first_of_phrases) {
                books[{row.section, together ? std::string_view{} : row.meaning}].add(row);
            }
        }
    }
    return books;
}

} // namespace

const PhraseBook& phrase_book(Section section, std::string_view meaning) {
    static const auto books = books_of_phrases();
    return books.at({section, meaning});
}

Rows rows_of(const LexiconFile& file, Section section, std::string_view meaning) {
    Rows rows;
    for (const auto& row : file.rows) {
        if (row.section == section && row.meaning == meaning) {
            rows.push_back(&row);
        }
    }
    return rows;
}

Rows rows_of(Section section) {
    Rows rows;
    for (const auto& file : lexicon_files()) {
        for (const auto& row : file.rows) {
            if (row.section == section) {
                rows.push_back(&row);
            }
        }
    }
    return rows;
}

bool fits_any(const Rows& rows, std::string_view word) {
    return std::ranges::any_of(rows, [word](const LexiconRow* row) {
        return row->phrase.ends_with('-') ? word.starts_with(row->words) : word == row->words;
    });
}

std::string words_at(const std::vector<std::string>& words, std::size_t first, std::size_t count) {
    return joined(std::span{words}.subspan(first, count), " ");
}

} // namespace thawslip::kitchen
