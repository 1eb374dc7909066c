#pragma once

#include "kitchen/settings.h"
#include "kitchen/texts/lexicon.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// The classes of the two lists together, as labels name them.
///
/// US nine: Food Allergen Labeling and Consumer Protection Act of 2004 and FASTER Act of 2021.
/// EU fourteen: Regulation (EU) 1169/2011, Annex II; the United Kingdom keeps the same.
enum class Allergen {
    Milk,
    Eggs,
    Fish,
    Crustaceans,
    TreeNuts,
    Peanuts,
    Wheat, ///< a class of its own in the US, one of the cereals containing gluten in the EU
    Soybeans,
    Sesame,
    GlutenCereals, ///< rye, barley, oats; EU only
    Celery,        ///< EU only, as are all below
    Mustard,
    Sulphites,
    Lupin,
    Molluscs,
};

/// An allergen and, where it has been named, its kind: tree nuts, "walnut".
struct NamedAllergen {
    Allergen allergen = Allergen::Milk;
    std::string kind; ///< empty where no kind was named
    friend bool operator==(const NamedAllergen&, const NamedAllergen&) = default;
};

/// What stands in `contains`, and what it means. Nothing meant: it is on neither list, and is
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

/// The name under which wording tables and labels know it: "milk", "tree nuts", "soybeans".
std::string_view key(Allergen allergen);

/// `sesame`, `tree nuts (walnut)`, in English; in the EU wheat is `cereals containing gluten
/// (wheat)`.
std::string label_name(const NamedAllergen& named, AllergenRules rules);

/// Whether the list asks for it to be named. Pine nuts are tree nuts in the US and not in Annex
/// II; coconut and chestnut are on neither list (FDA, Questions and Answers Regarding Food
/// Allergens, edition 5, January 2025).
bool is_listed(const NamedAllergen& named, AllergenRules rules);

/// Whether the kind must be named: tree nuts, fish and crustaceans in the US (21 U.S.C.
/// 343(w)(2)); nuts and cereals in the EU (1169/2011, Annex II and Art. 21).
bool must_name_kind(Allergen allergen, AllergenRules rules);

/// Reads one entry of `contains`: "Sesame seeds" → sesame, "walnuts" → tree nuts (walnut),
/// "gluten", "shellfish", "Haselnüsse"; in any language of the lexicon.
DeclaredAllergen read_allergen(std::string_view written);

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
/// where kinds must be named. In the EU "gluten" covers wheat.
bool is_declared(const NamedAllergen& named, const std::vector<DeclaredAllergen>& declared,
                 AllergenRules rules);

} // namespace thawslip::kitchen
