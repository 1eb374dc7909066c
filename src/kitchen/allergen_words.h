#pragma once

#include "kitchen/allergens.h"

#include <optional>
#include <span>
#include <string_view>

namespace thawslip::kitchen {

/// What a phrase says about an allergen.
enum class Says {
    Names,   ///< it is in there
    Denies,  ///< it is not, although another word of the text names it: "dairy-free"
    Nothing, ///< only sounds like one: "butternut", "cocoa butter"
};

struct AllergenPhrase {
    std::string_view phrase;
    Says says = Says::Nothing;
    Allergen allergen = Allergen::Milk; ///< of no account for Says::Nothing
    std::string_view kind = {};
};

/// The phrases met in recipes. One phrase may stand several times, once per allergen.
std::span<const AllergenPhrase> allergen_phrases();

/// Names of the classes in other languages, understood in `contains` only: in running text they
/// would be taken for English words.
std::span<const AllergenPhrase> allergen_names_abroad();

} // namespace thawslip::kitchen
