#include "kitchen/caution_topics.h"
#include "kitchen/temperature_text.h"
#include "kitchen/text.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view altitude_source = "USDA FSIS, Cooking at High Altitude";
constexpr std::string_view risk_source =
    "CDC, Tips for preventing Listeria food poisoning, 2014; Health Canada, food safety for "
    "vulnerable populations";

constexpr double feet_in_metre = 1.0 / 0.3048;
constexpr double high_altitude_feet = 3000.0;

double feet(const Scene& scene) {
    return scene.settings.altitude_metres * feet_in_metre;
}

bool is_high(const Scene& scene) {
    // A metre of slack: 3000 ft is 914.4 m, which people write as 914.
    return feet(scene) + feet_in_metre >= high_altitude_feet;
}

std::string altitude_text(const Scene& scene) {
    const auto metres = fmt::format("{} m", std::lround(scene.settings.altitude_metres));
    const auto in_feet = fmt::format("{} ft", std::lround(feet(scene)));
    return scene.settings.measures == Measures::Us ? in_style(in_feet, metres, false, style(scene))
                                                   : in_style(metres, in_feet, true, style(scene));
}

/// Water boils at 212 °F less 0.0018 °F for every foot: Colorado State University Extension,
/// High Altitude Food Preparation (203 °F at 5000 ft).
std::string boiling_text(const Scene& scene) {
    return published_text(std::round(212.0 - 0.0018 * feet(scene)), TemperatureUse::ColdLimit,
                          style(scene));
}

Findings simmering_high_up(const Scene& scene) {
    const bool simmers = is_in(scene.package, Vessel::Pot) || is_in(scene.package, Vessel::Pan) ||
                         is_in(scene.package, Vessel::Steamer);
    if (!is_high(scene) || !simmers) {
        return {};
    }
    return {{{altitude_text(scene), boiling_text(scene)}, cook_place(scene, "in")}};
}

Findings slow_cooker_high_up(const Scene& scene) {
    if (!is_high(scene) || !is_in(scene.package, Vessel::SlowCooker)) {
        return {};
    }
    return {{{altitude_text(scene)}, cook_place(scene, "in")}};
}

/// Smoked fish is only safe for them inside a cooked dish; cold cuts only when steaming hot.
Findings ready_to_eat_at_risk(const Scene& scene) {
    if (!scene.settings.people_at_risk || !holds(scene, {FoodKind::ReadyToEat})) {
        return {};
    }
    return {{{published_text(165, TemperatureUse::SafeMinimum, style(scene))},
             scene.package.where.key("food")}};
}

Findings low_target_at_risk(const Scene& scene) {
    const auto minimum = safe_minimum(scene.table, scene.package.food);
    const auto& cook = scene.package.cook;
    if (!scene.settings.people_at_risk || !minimum || !cook || cook->because.empty() ||
        (cook->until && reaches(cook->until->celsius, *minimum))) {
        return {};
    }
    return {{{}, cook_place(scene, "because")}};
}

Findings honey_at_risk(const Scene& scene) {
    if (!scene.settings.people_at_risk) {
        return {};
    }
    for (const auto& [text, where] : food_texts(scene.package)) {
        if (says_any(words_of(text), {"honey"})) {
            return {{{}, where}};
        }
    }
    return {};
}

constexpr CautionRule rules[] = {
    {"risk-low-target", CautionLevel::LabelAndCard,
     "Not for people who are pregnant, very young, old or weakened by illness: it is not heated "
     "to the usual safe minimum.",
     "", risk_source, low_target_at_risk},
    {"risk-ready-to-eat", CautionLevel::Card,
     "For people who are pregnant, very young, old or weakened by illness, heat it to {0} or "
     "until it steams.",
     "", risk_source, ready_to_eat_at_risk},
    {"risk-honey", CautionLevel::LabelAndCard,
     "Not for children under 12 months: it contains honey, cooked or not.", "",
     "CDC, Botulism prevention (from memory)", honey_at_risk},
    {"high-altitude", CautionLevel::Card,
     "At {0} water boils at about {1}: simmering takes longer. The safe temperature stays the "
     "same.",
     "", altitude_source, simmering_high_up},
    {"high-altitude-slow-cooker", CautionLevel::Card,
     "At {0} run the slow cooker on high for the first hour at least, allow more time, and check "
     "with a thermometer.",
     "", "Colorado State University Extension, High Altitude Food Preparation",
     slow_cooker_high_up},
};

} // namespace

std::span<const CautionRule> people_rules() {
    return rules;
}

} // namespace thawslip::kitchen
