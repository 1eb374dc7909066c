#pragma once

#include "kitchen/foods/food_words.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// Whose flesh, broth or sausage a text or a kind of food names, in any of the three languages: for
/// whoever eats none, so on the strict side.
struct FleshNamed {
    bool poultry = false;
    bool meat = false; ///< of furred animals
    bool fish = false;
    bool shellfish = false;
    bool perhaps = false; ///< a cut or a form that is mostly meat: "chops", "burger", "roast"
};

/// What a text names; not what is denied right before it ("vegan sausage").
/// \param words as `words_of` gives them
FleshNamed flesh_in(FoodWords food_words, const std::vector<std::string>& words);

/// What a kind of food of the storage table is made of, by its name and by what it is for certain.
FleshNamed flesh_of_kind(FoodWords food_words, std::string_view kind);

} // namespace thawslip::kitchen
