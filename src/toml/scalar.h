#pragma once

#include "toml/value.h"

#include <optional>
#include <string>
#include <string_view>

namespace thawslip::toml {

/// What a word without quotes means: a number, a truth, a date or a time (TOML 1.0, "Integer" to
/// "Local Time"); nothing where it is none of them.
std::optional<Content> scalar_of(std::string_view word);

/// What is wrong with a word that is no scalar, and what to write instead, empty where that is
/// not known.
struct WordFault {
    std::string message;
    std::string hint = {};
};

/// \param key whose value the word should be; empty in a list
WordFault explain_word(std::string_view word, std::string_view key);

} // namespace thawslip::toml
