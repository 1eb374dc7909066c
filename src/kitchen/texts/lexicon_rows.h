#pragma once

#include "kitchen/texts/inflection.h"

#include <span>
#include <string_view>

namespace thawslip::kitchen {

/// The tables of a file of words: what a rule looks for in the cook's text.
enum class Section {
    Appliance, ///< what food is cooked in
    Setting,   ///< how that is set: low, slow, under pressure, keeping warm
    Place,     ///< where food thaws: warm places, safe ones
    Thawing,   ///< words for thawing, for frozen food, for long stretches of time
    Negation,  ///< not, without, free; what only looks like it; where a clause ends
    Bean,
    BeanState, ///< dried, canned, boiled
    People,    ///< honey, infants
    Trace,     ///< "may contain", "traces of"
    Allergen,
    AllergenDenied, ///< "vegan" denies milk
    Allergy,        ///< "safe for", "allergic": whom food is said to suit
    Aside,          ///< what makes the name of an allergen none in a step: "the size of a walnut"
    Freezes,        ///< what the freezer does to a food
    Pack,           ///< packed without air
    Doing,          ///< what the words around a time or a temperature are about
    Dish,           ///< what a dish has inside or is: stuffed, a soup, rice
    Plant,          ///< what is ground, minced or cut as meat is, and is none
    Handling,       ///< what is done to food that ought not to be
    // Of those below, only the words themselves are looked for (phrases.h).
    Meat,        ///< whose meat a dish names
    Risk,        ///< what people at risk should not eat unheated
    Hazard,      ///< dishes with a poison or a parasite to watch for
    PartCooking, ///< cooked in part, browned, kept for later
    Gentle,      ///< heat that is low whatever gives it
};
inline constexpr auto first_of_phrases = Section::Meat;

/// One word or phrase and what it means. A phrase of one word that begins with a dash is also
/// found at the end of a longer word ("-pfanne" in "Bratpfanne"), one that ends with a dash at
/// the beginning ("schongar-" in "Schongartopf").
struct LexiconRow {
    Section section = Section::Appliance;
    std::string_view meaning;
    std::string_view phrase;
    std::string_view words; ///< of the phrase, as `words_of` (text.h) cuts them, a space between
};

/// The words of one language, in the order of its file.
struct LexiconFile {
    Tongue tongue = Tongue::English;
    std::span<const LexiconRow> rows;
};

/// All languages: src/kitchen/words/*.toml as constants, made when Thawslip is built
/// (src/intake/words_maker.cpp).
std::span<const LexiconFile> lexicon_files();

} // namespace thawslip::kitchen
