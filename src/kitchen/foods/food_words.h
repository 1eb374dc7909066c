#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// What a word says of food; see food_words/en.toml.
enum class FoodRole {
    Kind,       ///< one kind of food
    Question,   ///< one of several, the rawest first
    Base,       ///< what it is made of
    Form,       ///< how it is cut
    State,      ///< raw, cooked or smoked
    NoAnimal,   ///< the meat named after it is none
    SaysNothing ///< changes nothing
};

/// An everyday word or phrase for food. All languages are read, whichever is set.
struct FoodWord {
    std::string_view key; ///< its stems, with single spaces: what text is held against
    FoodRole role = FoodRole::SaysNothing;
    std::string_view means; ///< a kind, a base, a form, a state; kinds of a question parted by "|"
    std::string_view written;  ///< as it stands in its language's file
    std::string_view language; ///< en, es, de
    bool in_compounds = false; ///< whether German has it too, and so joins it to other words
};

/// Words sorted by their keys.
using FoodWords = std::span<const FoodWord>;

/// A word with its ending taken off, so that singular and plural are the same in English, Spanish
/// and German. Meant for comparing, not for printing. \pre `word` is one of words_of()
std::string food_stem(std::string_view word);

/// A word without the second letter of "ae", "oe", "ue": how German is written without its dots.
std::string without_dots(std::string_view word);

/// The stems of a text's words, with single spaces between.
std::string food_key(std::string_view text);

/// A stretch of a text, and the word that it is; nullptr where nobody knows it.
struct FoodMatch {
    std::size_t first = 0; ///< position among the text's words
    std::size_t count = 1;
    const FoodWord* word = nullptr;
};

/// Every word of a text, matched: the longest phrase wins at each place. The food
/// in a phrase for a cut ("pork belly") stands before it, for itself. A word that is not found is
/// taken apart as German compounds are ("Rindergulaschsuppe" ends in "suppe"); its parts then
/// stand at the same position.
std::vector<FoodMatch> match_foods(FoodWords words, const std::vector<std::string>& text);

/// The kinds of a question, the rawest first; of any other word what it means, alone.
std::vector<std::string> meanings(const FoodWord& word);

} // namespace thawslip::kitchen
