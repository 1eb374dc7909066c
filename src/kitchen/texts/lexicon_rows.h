#pragma once

#include "kitchen/texts/inflection.h"

#include <span>
#include <string_view>

namespace thawslip::kitchen {

/// The tables of a file of words: what a rule looks for in the cook's text. `lexicon_sections`
/// has their names in the same order.
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
    Aside,          ///< what makes the name of an allergen none in a step: "the size of a walnut"
    Freezes,        ///< what the freezer does to a food
    Pack,           ///< packed without air
    Doing,          ///< what the words around a time or a temperature are about
    Dish,           ///< what a dish has inside or is: stuffed, a soup, rice
};

inline constexpr std::string_view lexicon_sections[] = {
    "appliance",  "setting", "place", "thawing",  "negation",        "bean",
    "bean-state", "people",  "trace", "allergen", "allergen-denied", "aside",
    "freezes",    "pack",    "doing", "dish"};

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
