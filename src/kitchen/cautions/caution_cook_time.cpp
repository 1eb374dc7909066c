#include "kitchen/cautions/caution_topics.h"
#include "kitchen/cooking/cook_time.h"
#include "kitchen/sources.h"

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view without_thawing =
    "USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013, Cooking Without Thawing (read in a "
    "copy: of meat and poultry only)";

bool is_from_frozen(const Scene& scene) {
    return scene.package.thaw.method == ThawMethod::FromFrozen;
}

bool has_time_from(const Scene& scene, std::optional<TimeFrom> from) {
    return scene.package.cook && scene.package.cook->time && scene.package.cook->time_from == from;
}

Findings at(const Scene& scene, std::string_view key, std::vector<std::string> values = {}) {
    return {{std::move(values), cook_place(scene, key)}};
}

Findings frozen_time_of_thawed(const Scene& scene) {
    return !is_from_frozen(scene) && has_time_from(scene, TimeFrom::Frozen) ? at(scene, "time_from")
                                                                            : Findings{};
}

Findings thawed_time_of_frozen(const Scene& scene) {
    return is_from_frozen(scene) && has_time_from(scene, TimeFrom::Thawed) &&
                   !may_count_from_frozen(scene.package, scene.table)
               ? at(scene, "time_from", {scene.package.cook->in})
               : Findings{};
}

/// In steam under pressure and in a microwave a guess is far off.
Findings unsaid(const Scene& scene) {
    const bool far_off =
        is_in(scene.package, Vessel::PressureCooker) || is_in(scene.package, Vessel::Microwave);
    return is_from_frozen(scene) && far_off && has_time_from(scene, std::nullopt)
               ? at(scene, "time", {scene.package.cook->in})
               : Findings{};
}

constexpr CautionRule cook_time_rows[] = {
    refusal("time-for-frozen", practice, frozen_time_of_thawed,
            "the cooking time is for frozen food, but this bag is thawed first",
            "give the time for thawed food, or cook it from frozen: method = \"from frozen\""),
    refusal("time-for-thawed", without_thawing, thawed_time_of_frozen,
            "the cooking time is for thawed food, but this bag is cooked from frozen, and nothing "
            "is published that turns it into one from frozen for what is inside and \"{0}\"",
            "give the time from frozen, tried out, with time_from = \"frozen\""),
    {"time-from-unsaid", CautionLevel::Check, practice, unsaid},
};

} // namespace

std::span<const CautionRule> cook_time_rules() {
    return cook_time_rows;
}

} // namespace thawslip::kitchen
