#include "kitchen/caution_topics.h"
#include "kitchen/temperature_text.h"

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view temperatures =
    "FoodSafety.gov, Safe Minimum Internal Temperatures; UK Food Standards Agency, Cooking your "
    "food (for the list uk)";

std::optional<SafeMinimum> minimum_of(const Scene& scene) {
    return safe_minimum(scene.table, scene.package.food);
}

bool has_target(const Scene& scene) {
    return scene.package.cook && scene.package.cook->until.has_value();
}

bool has_reason(const Scene& scene) {
    return scene.package.cook && !scene.package.cook->because.empty();
}

/// The minimum that the target misses; nothing where there is no target or it is high enough.
std::optional<SafeMinimum> missed_minimum(const Scene& scene) {
    const auto minimum = minimum_of(scene);
    if (!minimum || !has_target(scene) || reaches(scene.package.cook->until->celsius, *minimum)) {
        return std::nullopt;
    }
    return minimum;
}

std::string target_text(const Scene& scene) {
    return to_text(*scene.package.cook->until, TemperatureUse::SafeMinimum, style(scene));
}

Findings below_minimum(const Scene& scene) {
    const auto minimum = missed_minimum(scene);
    if (!minimum || has_reason(scene)) {
        return {};
    }
    return {{{target_text(scene), minimum_text(scene, *minimum)}, cook_place(scene, "until")}};
}

Findings below_minimum_with_reason(const Scene& scene) {
    const auto minimum = missed_minimum(scene);
    if (!minimum || !has_reason(scene)) {
        return {};
    }
    return {{{target_text(scene), minimum_text(scene, *minimum), scene.package.cook->because},
             cook_place(scene, "because")}};
}

Findings raw_without_target(const Scene& scene) {
    const auto minimum = minimum_of(scene);
    if (!minimum || !scene.package.cook || has_target(scene) || has_reason(scene) ||
        !holds_raw(scene)) {
        return {};
    }
    return {{{minimum_text(scene, *minimum)}, scene.package.cook->where}};
}

/// A cooked dish without a target, or a raw one without any cooking instructions, is no mistake:
/// the print itself says how hot it must get.
Findings without_target(const Scene& scene) {
    const auto minimum = minimum_of(scene);
    if (!minimum || has_target(scene) || has_reason(scene) ||
        (holds_raw(scene) && scene.package.cook)) {
        return {};
    }
    return {{{minimum_text(scene, *minimum)}, cook_place(scene, "until")}};
}

Findings no_target_with_reason(const Scene& scene) {
    if (!minimum_of(scene) || has_target(scene) || !has_reason(scene)) {
        return {};
    }
    return {{{scene.package.cook->because}, cook_place(scene, "because")}};
}

/// Whole cuts are safe at 145 °F only with their rest; at the temperature of ground meat they
/// need none.
Findings rest(const Scene& scene) {
    constexpr double needs_no_rest_celsius = 71.0;
    const auto minimum = minimum_of(scene);
    if (!minimum || minimum->rest.count() == 0 || !has_target(scene) ||
        scene.package.cook->until->celsius >= needs_no_rest_celsius) {
        return {};
    }
    return {{{std::to_string(minimum->rest.count())}, cook_place(scene, "until")}};
}

Findings hold(const Scene& scene) {
    constexpr double needs_no_holding_celsius = 75.0;
    const auto minimum = minimum_of(scene);
    if (!minimum || minimum->held.count() == 0 || !has_target(scene) ||
        !reaches(scene.package.cook->until->celsius, *minimum) ||
        scene.package.cook->until->celsius >= needs_no_holding_celsius) {
        return {};
    }
    return {{{std::to_string(minimum->held.count())}, cook_place(scene, "until")}};
}

Findings microwave(const Scene& scene) {
    if (!is_in(scene.package, Vessel::Microwave) || !minimum_of(scene)) {
        return {};
    }
    return {{{}, cook_place(scene, "in")}};
}

constexpr CautionRule rules[] = {
    {"target-below-minimum", CautionLevel::Refuse,
     "{0} is below the safe minimum for what is inside, {1} in the middle",
     "raise it, or say why it is right here: because = \"…\"", temperatures, below_minimum},
    {"raw-without-target", CautionLevel::Refuse,
     "raw food is cooked without a target temperature; expected {0} in the middle or more",
     "add until = \"…\" below [package.cook], or say why there is none: because = \"…\"",
     temperatures, raw_without_target},
    {"target-missing", CautionLevel::LabelAndCard, "Heat it until the middle reaches {0}.", "",
     temperatures, without_target},
    {"target-below-minimum-with-reason", CautionLevel::LabelAndCard,
     "The target of {0} is below the usual safe minimum of {1}: {2}", "", temperatures,
     below_minimum_with_reason},
    {"no-target-with-reason", CautionLevel::Card, "No target temperature: {0}", "", temperatures,
     no_target_with_reason},
    {"rest", CautionLevel::Card, "Let it rest {0} minutes before you cut it.", "", temperatures,
     rest},
    {"hold", CautionLevel::Card, "Keep it that hot for {0} minutes.", "", temperatures, hold},
    {"microwave-stand", CautionLevel::Card,
     "Cover it, stir it halfway, and let it stand covered for 2 minutes before you measure.", "",
     "FDA Food Code 3-401.12 and 3-403.11, Microwave Cooking; Reheating for Hot Holding",
     microwave},
};

} // namespace

std::span<const CautionRule> temperature_rules() {
    return rules;
}

} // namespace thawslip::kitchen
