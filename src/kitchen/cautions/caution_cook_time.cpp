#include "kitchen/cautions/caution_topics.h"
#include "kitchen/cooking/cook_time.h"
#include "kitchen/measures/unit_text.h"
#include "kitchen/sources.h"

#include <tuple>

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

/// How much larger than the smallest size of its dish a bag is before one cooking time is doubtful
/// for both: common practice, no source. Heat takes the square of the thickness.
constexpr double thicker = 1.5;
constexpr double heavier = 3.0;
constexpr double hair = 0.01; // mm: what is exactly as much is not more

/// One time for bags of 6 kg and of 700 g: the large ones stay raw, or the small ones burn.
Findings one_time_for_sizes(const Scene& scene) {
    const auto& package = scene.package;
    if (!package.size || !package.cook || !package.cook->time) {
        return {};
    }
    const auto& [lightest, thinnest] = std::tie(package.size->lightest, package.size->thinnest);
    if (package.thickness && thinnest &&
        package.thickness->in_millimetres() > thicker * thinnest->in_millimetres() + hair) {
        return {{{thickness_text(*package.thickness, style(scene)),
                  thickness_text(*thinnest, style(scene))},
                 place_of_size(package, "thickness")}};
    }
    if (package.weight && lightest && package.weight->grams > heavier * lightest->grams) {
        return {{{to_text(*package.weight, style(scene)), to_text(*lightest, style(scene))},
                 place_of_size(package, "weight")}};
    }
    return {};
}

constexpr CautionRule cook_time_rows[] = {
    refusal("time-for-frozen", practice, frozen_time_of_thawed,
            "the cooking time is for frozen food, but this bag is thawed first",
            "give the time for thawed food, or cook it from frozen: method = \"from frozen\""),
    refusal("time-for-thawed", without_thawing, thawed_time_of_frozen,
            "the cooking time is for thawed food, but this bag is cooked from frozen, and nothing "
            "is published that turns it into one from frozen for what is inside and \"{0}\"",
            "give the time from frozen, tried out, with time_from = \"frozen\""),
    {"time-for-sizes", CautionLevel::Report, practice, one_time_for_sizes},
    {"time-from-unsaid", CautionLevel::Check, practice, unsaid},
};

} // namespace

std::span<const CautionRule> cook_time_rules() {
    return cook_time_rows;
}

} // namespace thawslip::kitchen
