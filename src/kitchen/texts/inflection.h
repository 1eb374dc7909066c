#pragma once

#include <array>
#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// The languages whose everyday words are read, whatever language is set.
enum class Tongue { English, Spanish, German, French };

inline constexpr std::size_t tongues = 4;

/// A dictionary form that a word may have, and in which languages.
struct Form {
    std::string text;
    /// How far it is from the word as it stands, by `Tongue`: 0 for the word itself, `no_form`
    /// where it is no form in that language.
    std::array<unsigned char, tongues> changes = {};
};

inline constexpr unsigned char no_form = 255;

/// The dictionary forms that a word of a text may have in any language: the word itself, then
/// without its endings of number, gender and case, by rule of thumb. "anchovies" → "anchovy";
/// "cocidas" → "cocida", "cocido"; "Nüsse" → "nuss". Meant for comparing, not for printing: some
/// are no words.
///
/// \param word small letters without accents, as `words_of` gives them
std::vector<Form> dictionary_forms(std::string_view word);

/// The singular by English rule of thumb: "anchovies" → "anchovy", "oats" → "oat".
std::string singular(std::string_view word);

} // namespace thawslip::kitchen
