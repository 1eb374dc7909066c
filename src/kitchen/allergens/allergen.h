#pragma once

#include "base/named.h"

#include <string>
#include <string_view>

namespace thawslip::kitchen {

/// The classes of all lists together, as labels name them.
enum class Allergen {
    Milk,
    Eggs,
    Fish,
    Crustaceans,
    TreeNuts,
    Peanuts,
    Wheat, ///< a class of its own, or one of the cereals containing gluten: AllergenList says which
    Soybeans,
    Sesame,
    GlutenCereals, ///< rye, barley, oats
    Celery,
    Mustard,
    Sulphites,
    Lupin,
    Molluscs,
};

/// The names under which the files of words, wording tables and labels know them.
inline constexpr Named<Allergen> allergen_names[] = {
    {Allergen::Milk, "milk"},           {Allergen::Eggs, "eggs"},
    {Allergen::Fish, "fish"},           {Allergen::Crustaceans, "crustaceans"},
    {Allergen::TreeNuts, "tree nuts"},  {Allergen::Peanuts, "peanuts"},
    {Allergen::Wheat, "wheat"},         {Allergen::Soybeans, "soybeans"},
    {Allergen::Sesame, "sesame"},       {Allergen::GlutenCereals, "cereals containing gluten"},
    {Allergen::Celery, "celery"},       {Allergen::Mustard, "mustard"},
    {Allergen::Sulphites, "sulphites"}, {Allergen::Lupin, "lupin"},
    {Allergen::Molluscs, "molluscs"},
};
static_assert(names_all(allergen_names, Allergen::Molluscs));

constexpr std::string_view key(Allergen allergen) {
    return name_in(allergen_names, allergen);
}

/// An allergen and, where it has been named, its kind: tree nuts, "walnut".
struct NamedAllergen {
    Allergen allergen = Allergen::Milk;
    std::string kind; ///< empty where no kind was named
    friend bool operator==(const NamedAllergen&, const NamedAllergen&) = default;
};

} // namespace thawslip::kitchen
