#pragma once

#include "kitchen/texts/inflection.h"

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
    std::vector<std::size_t> entries; ///< positions in the list the book was made from
};

/// A list of phrases that can be looked for in running text: whole words only, singular or
/// plural, accents and letter case ignored. At each place the longest phrase wins and uses up
/// its words, so that "butternut squash" keeps "butter" from being seen in it and "peanut butter"
/// is not also "butter".
class PhraseBook {
public:
    explicit PhraseBook(const std::vector<std::string_view>& phrases);

    std::vector<PhraseMatch> find(const std::vector<std::string>& words) const;

private:
    struct Entry {
        std::vector<std::string> words; ///< singular
        std::size_t position = 0;
    };

    /// The longest phrase that starts at `place` of the text's singulars; of count 0 where none.
    PhraseMatch longest_at(const std::vector<std::string>& text, std::size_t place) const;

    std::map<std::string, std::vector<Entry>> by_first_word_;
};

/// The words of a match, with single spaces between.
std::string joined(const std::vector<std::string>& words, std::size_t first, std::size_t count);

} // namespace thawslip::kitchen
