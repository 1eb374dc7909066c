#pragma once

#include "kitchen/texts/lexicon_rows.h"

#include <cstddef>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// One phrase found in a text: words `first` to `first + count - 1` of `words_of(text)`.
struct PhraseMatch {
    std::size_t first = 0;
    std::size_t count = 0;
    std::string_view meaning;
};

/// A list of phrases that can be looked for in running text: whole words only, singular or
/// plural, accents and letter case ignored. At each place the longest phrase wins and uses up
/// its words, so that "brown rice" keeps "brown" from being seen in it. Of two that are as long,
/// the first that was added counts.
class PhraseBook {
public:
    void add(const LexiconRow& row);

    std::vector<PhraseMatch> find(const std::vector<std::string>& words) const;

private:
    struct Entry {
        std::vector<std::string> words; ///< singular
        std::string_view meaning;
    };

    /// The longest phrase that starts at `place` of the text's singulars; of count 0 where none.
    PhraseMatch longest_at(const std::vector<std::string>& text, std::size_t place) const;

    std::map<std::string, std::vector<Entry>> by_first_word_;
};

/// The phrases of all languages that mean so. Of Section::Meat, whose phrases keep each other from
/// being seen, all in one book, under "".
/// \pre the section is `first_of_phrases` or later, and a file has the meaning
const PhraseBook& phrase_book(Section section, std::string_view meaning);

/// Rows of one language that mean so, for words that are looked for one by one.
using Rows = std::vector<const LexiconRow*>;
Rows rows_of(const LexiconFile& file, Section section, std::string_view meaning);

/// The rows of a section, language by language.
Rows rows_of(Section section);

/// Whether a word is that of a row, or begins with that of one that ends with a dash.
bool fits_any(const Rows& rows, std::string_view word);

/// The words of a match, with single spaces between.
std::string words_at(const std::vector<std::string>& words, std::size_t first, std::size_t count);

} // namespace thawslip::kitchen
