#pragma once

#include "kitchen/allergens/allergen_list.h"
#include "kitchen/texts/lexicon.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// What stands in `contains`, and what it means. Nothing meant: it is on no list, and is
/// printed as written.
struct DeclaredAllergen {
    std::string as_written;
    std::vector<NamedAllergen> meant; ///< two for "soy sauce": soybeans and wheat
};

/// A word of a text that names an allergen.
struct AllergenMention {
    std::string words; ///< small letters, without accents: "barley", "soy sauce"
    NamedAllergen named;
};

/// Reads one entry of `contains`: "Sesame seeds" → sesame, "walnuts" → tree nuts (walnut),
/// "gluten", "shellfish", "Haselnüsse"; in any language of the lexicon.
DeclaredAllergen read_allergen(std::string_view written);

std::vector<DeclaredAllergen> read_allergens(const std::vector<std::string>& list);

/// The word for an allergen, in any language, that was probably meant by one that names none:
/// "celery" for "selery"; nothing where none is near.
std::optional<std::string> allergen_near(std::string_view written);

/// All that is not in food that is said to be free of an allergen: with gluten no wheat, which is
/// one of its cereals; with tree nuts no peanuts, for people call both nuts.
std::vector<Allergen> denied_with(Allergen allergen);

/// Every allergen that the words of `text` name, in order, each class and kind once. Whole words
/// only, and not what merely sounds like one: eggplant, nutmeg, buckwheat, coconut milk, peanut
/// butter as milk, butternut, cream of tartar, oyster mushrooms. "Gluten-free", "sin gluten",
/// "vegan" and their like take back what they deny. In all languages of the lexicon.
std::vector<AllergenMention> mentioned_allergens(std::string_view text);
std::vector<AllergenMention> mentioned_allergens(const WordedText& text);

/// The same for a step or a note, which says more than what is in the food: a word that is also a
/// tool ("the pan"), a size ("like a walnut") or somebody's allergy names none there.
std::vector<AllergenMention> allergens_in_step(const WordedText& text);

/// Whether what has been declared covers `named`: the same class, and not another kind of it
/// where kinds must be named. Where wheat is one of the cereals with gluten, "gluten" covers it.
bool is_declared(const NamedAllergen& named, const std::vector<DeclaredAllergen>& declared,
                 const AllergenList& list);

} // namespace thawslip::kitchen
