#pragma once

#include "base/diagnostic.h"
#include "kitchen/texts/lexicon_rows.h"
#include "toml/document.h"

#include <string>
#include <vector>

namespace thawslip::intake {

/// A row of a file of words, with texts of its own.
struct WordsRow {
    kitchen::Section section = kitchen::Section::Appliance;
    std::string meaning;
    std::string phrase;
};

/// Reads a file of everyday words; see src/kitchen/words/en.toml for its shape. What is wrong (a
/// section or meaning nobody asks for, a phrase without letters, one that stands twice under the
/// same meaning, a part of a compound that is too short or of several words) is appended to
/// `faults`, and such rows are left out.
std::vector<WordsRow> read_words(const toml::Document& document, Diagnostics& faults);

} // namespace thawslip::intake
