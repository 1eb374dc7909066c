#pragma once

#include "kitchen/allergens/allergen.h"

#include <span>
#include <string>
#include <string_view>

namespace thawslip::kitchen {

/// A class of a list of allergens.
struct ListedAllergen {
    Allergen allergen;
    bool by_kind = false;                         ///< its kind must be named: "walnut", "cod"
    std::span<const std::string_view> kinds = {}; ///< the only ones that count; none: all do
};

/// A list of the allergens that must be named. Another list is another row of allergen_list.cpp.
struct AllergenList {
    std::string_view name;                  ///< as the settings call it: "us"
    std::span<const std::string_view> also; ///< what else it is called
    std::string_view law;
    std::span<const ListedAllergen> classes; ///< in the law's order
    /// Whether wheat is one of a class "cereals containing gluten"; else it is a class of its own,
    /// and barley is called barley.
    bool has_cereal_class = false;
};

/// Every list there is; the first holds where none is set.
std::span<const AllergenList> allergen_lists();

/// The list of that name; nullptr where there is none.
const AllergenList* find_allergen_list(std::string_view name);

/// The class and kind as which the list counts it: wheat may be a kind of cereal.
NamedAllergen as_listed(NamedAllergen named, const AllergenList& list);

/// Whether the list knows it by its kind's own name alone: "barley".
bool goes_by_kind(const NamedAllergen& named, const AllergenList& list);

/// `sesame`, `tree nuts (walnut)`, in English; in the EU wheat is `cereals containing gluten
/// (wheat)`.
std::string label_name(const NamedAllergen& named, const AllergenList& list);

/// Whether the list asks for it to be named. Pine nuts are tree nuts in the US and not in the EU's
/// Annex II; coconut and chestnut are on no list.
bool is_listed(const NamedAllergen& named, const AllergenList& list);

/// Whether the kind must be named, where it has been named by its class.
bool must_name_kind(Allergen allergen, const AllergenList& list);

} // namespace thawslip::kitchen
