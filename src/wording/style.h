#pragma once

#include "kitchen/measures/unit_style.h"
#include "kitchen/plan.h"
#include "kitchen/settings.h"
#include "wording/language.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::wording {

/// How a print speaks: in which language, in which units, and by whose list of allergens.
struct Style {
    const Language& language; ///< must outlive the style; the shipped ones always do
    kitchen::UnitStyle units;
    const kitchen::AllergenList* allergens = kitchen::allergen_lists().data();

    std::string say(std::string_view key, const std::vector<std::string>& values = {}) const {
        return language.say(key, values);
    }
};

/// The kitchen's units and list, with the language's decimal mark and names of units.
Style style_for(const Language& language, const kitchen::KitchenSettings& settings);

/// "1 l (4¼ cups) vegetable stock"; as written where it cannot be converted.
std::string say_quantity(const kitchen::Quantity& quantity, const Style& style);

std::string say_weight(kitchen::Mass weight, const Style& style); ///< "2.2 kg (4 lb 14 oz)"

/// "74 °C (165 °F)": a safe temperature, rounded up where it is converted.
std::string say_target(kitchen::Temperature target, const Style& style);

/// "190 °C (375 °F), lid on" where a setting begins with a temperature and has no other figure;
/// else as written.
std::string say_setting(std::string_view setting, const Style& style);

/// An allergen as the style's list names it: "tree nuts (walnut)"; barley is "barley" in the US
/// and "cereals containing gluten (barley)" in the EU.
std::string say_allergen(const kitchen::NamedAllergen& named, const Style& style);

/// What a package is said to contain, or may, each allergen once; what no list knows, as written.
/// Empty where nothing was declared, which does not say that the food is free of anything.
std::string say_contains(const std::vector<kitchen::DeclaredAllergen>& all, const Style& style);

} // namespace thawslip::wording
