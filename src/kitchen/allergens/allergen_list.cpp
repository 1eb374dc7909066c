#include "kitchen/allergens/allergen_list.h"

#include "base/list.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::kitchen {
namespace {

using enum Allergen;

// FDA, Questions and Answers Regarding Food Allergens, edition 5, January 2025: twelve tree nuts,
// and no coconut; 21 U.S.C. 343(w)(2): nuts, fish and crustaceans by their kind.
constexpr std::string_view us_also[] = {"usa"};
constexpr ListedAllergen us[] = {
    {Milk},  {Eggs},     {Fish, true}, {Crustaceans, true}, {TreeNuts, true}, {Peanuts},
    {Wheat}, {Soybeans}, {Sesame},
};

// The United Kingdom keeps the same list. Nuts and cereals by their kind: Annex II and Art. 21.
constexpr std::string_view eu_also[] = {"uk"};
constexpr std::string_view eu_nuts[] = {"almond", "hazelnut",   "walnut",    "cashew",
                                        "pecan",  "Brazil nut", "pistachio", "macadamia"};
constexpr ListedAllergen eu[] = {
    {GlutenCereals, true},
    {Crustaceans},
    {Eggs},
    {Fish},
    {Peanuts},
    {Soybeans},
    {Milk},
    {TreeNuts, true, eu_nuts},
    {Celery},
    {Mustard},
    {Sesame},
    {Sulphites},
    {Lupin},
    {Molluscs},
};

// B.01.010.1(1) as in force on 31 March 2021 (read); by the common name of the fish, crustacean or
// mollusc and of the cereal (B.01.010.1(6), from memory). Sulphites of 10 ppm or more.
constexpr std::string_view canada_also[] = {"ca"};
constexpr std::string_view canada_nuts[] = {"almond",   "Brazil nut", "cashew",
                                            "hazelnut", "macadamia",  "pecan",
                                            "pine nut", "pistachio",  "walnut"};
constexpr ListedAllergen canada[] = {
    {TreeNuts, true, canada_nuts},
    {Peanuts},
    {Sesame},
    {Wheat},
    {Eggs},
    {Milk},
    {Soybeans},
    {Crustaceans, true},
    {Molluscs, true},
    {Fish, true},
    {Mustard},
    {GlutenCereals, true},
    {Sulphites},
};

constexpr AllergenList lists[] = {
    {"us", us_also,
     "Food Allergen Labeling and Consumer Protection Act of 2004 and FASTER Act of 2021", us},
    {"eu", eu_also, "Regulation (EU) 1169/2011, Annex II", eu, true},
    {"canada", canada_also, "Food and Drug Regulations (C.R.C., c. 870), B.01.010.1", canada},
};

const ListedAllergen* find_class(Allergen allergen, const AllergenList& list) {
    const auto found = std::ranges::find(list.classes, allergen, &ListedAllergen::allergen);
    return found == list.classes.end() ? nullptr : &*found;
}

} // namespace

std::span<const AllergenList> allergen_lists() {
    return lists;
}

const AllergenList* find_allergen_list(std::string_view name) {
    const auto* found = std::ranges::find(lists, name, &AllergenList::name);
    return found == std::end(lists) ? nullptr : found;
}

NamedAllergen as_listed(NamedAllergen named, const AllergenList& list) {
    if (list.has_cereal_class && named.allergen == Wheat) {
        return {GlutenCereals, named.kind.empty() ? "wheat" : std::move(named.kind)};
    }
    return named;
}

bool goes_by_kind(const NamedAllergen& named, const AllergenList& list) {
    return !list.has_cereal_class && named.allergen == GlutenCereals && !named.kind.empty();
}

std::string label_name(const NamedAllergen& named, const AllergenList& list) {
    const auto [allergen, kind] = as_listed(named, list);
    return kind.empty() ? std::string{key(allergen)} : fmt::format("{} ({})", key(allergen), kind);
}

bool is_listed(const NamedAllergen& named, const AllergenList& list) {
    const auto* listed = find_class(as_listed(named, list).allergen, list);
    return listed != nullptr &&
           (named.kind.empty() || listed->kinds.empty() || contains(listed->kinds, named.kind));
}

bool must_name_kind(Allergen allergen, const AllergenList& list) {
    const auto* listed = find_class(allergen, list);
    return listed != nullptr && listed->by_kind;
}

} // namespace thawslip::kitchen
