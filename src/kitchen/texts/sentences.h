#pragma once

#include "kitchen/texts/lexicon.h"

#include <optional>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// The sentences of a text, each cut into words: a clause tells little of what a time or a
/// temperature in the next one is about.
std::vector<WordedText> sentences(std::string_view text);

/// Whether a word of the text lies in a clause that names the meaning.
bool clause_says(const WordedText& text, std::size_t word, Section section,
                 std::string_view meaning);

/// The number that is a whole word of a text: 90, 2.5, 2,5.
std::optional<double> number_at(const WordedText& text, std::size_t word);

} // namespace thawslip::kitchen
