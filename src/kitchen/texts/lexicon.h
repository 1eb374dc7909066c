#pragma once

#include "kitchen/texts/inflection.h"
#include "kitchen/texts/lexicon_rows.h"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// A cook's text cut into words, each with the clause it stands in: what commas, full stops,
/// brackets and dashes part. Numbers are words too.
struct WordedText {
    std::vector<std::string> words;       ///< small letters, no accents
    std::vector<int> clauses;             ///< rising, one for each word
    std::vector<std::vector<Form>> forms; ///< the dictionary forms of each word
};

WordedText worded(std::string_view text);

/// One place of a text that a row of the lexicon names.
struct Mention {
    std::size_t first = 0; ///< words `first` to `first + count - 1`
    std::size_t count = 0;
    std::string_view meaning; ///< as src/kitchen/words has it: "slow-cooker", "tree nuts (almond)"
    std::string_view phrase;  ///< the row's own words
};

/// What the words of `text` name in a section before `first_of_phrases`, in order, in whatever
/// language; several at one
/// place where a phrase has several meanings. At each place the longest phrase wins and uses up
/// its words, so that "peanut butter" is not also "butter"; a word as it stands wins over a
/// dictionary form, and that over a part of a compound.
std::vector<Mention> mentions(const WordedText& text, Section section);

/// The same for one meaning.
std::vector<Mention> mentions(const WordedText& text, Section section, std::string_view meaning);

/// Whether the text names the meaning anywhere.
bool says(const WordedText& text, Section section, std::string_view meaning);

/// The words of a mention, with single spaces between.
std::string words_of(const WordedText& text, const Mention& mention);

} // namespace thawslip::kitchen
