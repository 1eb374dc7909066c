#include "kitchen/cautions/caution_topics.h"
#include "kitchen/cooking/gentle_heat.h"
#include "kitchen/cooking/thaw_pairing.h"
#include "kitchen/sources.h"

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view low_heat =
    "USDA: cook meat and poultry at 325 °F at least; FDA Food Code 3-501.13, Thawing";
constexpr std::string_view microwave_source =
    "USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013; FDA Food Code 3-501.13(C)";

/// Where this dish is thawed and heated so that food passes from one to the other like this.
template <Passage passage, Heat heat>
Findings passes(const Scene& scene) {
    const auto& said = scene.heat;
    if (said.heat != heat || pairing(scene.package.thaw.method, heat).passage != passage ||
        !is_perishable(scene)) {
        return {};
    }
    return {{{said.words}, said.where}};
}

template <ThawMethod method, Heat heat>
Findings refuses(const Scene& scene) {
    return scene.package.thaw.method == method ? passes<Passage::Refused, heat>(scene) : Findings{};
}

/// A slow cooker full of ice is wrong whatever the ice is of.
Findings frozen_in_slow_cooker(const Scene& scene) {
    return found_if(scene.heat.heat == Heat::SlowCooker &&
                        scene.package.thaw.method == ThawMethod::FromFrozen,
                    scene.heat.where);
}

/// Not what was cooked before: that is made hot elsewhere first.
Findings straight_into_slow_cooker(const Scene& scene) {
    return is_surely_cooked(scene) ? Findings{}
                                   : passes<Passage::AtOnceHigh, Heat::SlowCooker>(scene);
}

/// What only keeps heat in must have all of it before.
Findings keeps_heat_only(const Scene& scene) {
    return found_if(scene.package.cook && is_haybox(scene.package.cook->in),
                    cook_place(scene, "in"));
}

constexpr CautionRule pairing_rows[] = {
    refusal("slow-cooker-frozen", slow_cooker_safety, frozen_in_slow_cooker,
            "a slow cooker must not be filled with frozen food; expected food that is fully thawed",
            "thaw it first (method = \"refrigerator\"), or cook it from frozen in the oven or in a "
            "pot"),
    refusal("low-heat-frozen", low_heat, refuses<ThawMethod::FromFrozen, Heat::Low>,
            "\"{0}\" heats too slowly for frozen food; expected food that is fully thawed, or more "
            "heat",
            "thaw it first (method = \"refrigerator\"), or cook it from frozen in a hot oven or in "
            "a pot"),
    refusal(
        "slow-cooker-from-microwave", microwave_source,
        refuses<ThawMethod::Microwave, Heat::SlowCooker>,
        "food from the microwave is warm in parts already, and a slow cooker heats it too slowly",
        "thaw it in the refrigerator, or cook it at once in a pot or in a hot oven"),
    refusal("low-heat-from-microwave", microwave_source, refuses<ThawMethod::Microwave, Heat::Low>,
            "food from the microwave is warm in parts already, and \"{0}\" heats it too slowly",
            "thaw it in the refrigerator, or cook it at once in a pot or in a hot oven"),
    {"slow-cooker-from-water", CautionLevel::LabelAndCard, slow_cooker_safety,
     straight_into_slow_cooker, "STRAIGHT INTO SLOW COOKER - 1 H ON HIGH"},
    {"low-heat-from-water", CautionLevel::LabelAndCard, low_heat,
     passes<Passage::AtOnceHot, Heat::Low>, "HEAT UP BEFORE IT GOES IN"},
    {"haybox-boil-first", CautionLevel::LabelAndCard, practice, keeps_heat_only,
     "FULL BOIL BEFORE IT GOES IN"},
    {"slow-cooker-thaw-first", CautionLevel::Card, slow_cooker_safety,
     passes<Passage::KeptCold, Heat::SlowCooker>, "THAW FULLY BEFORE SLOW COOKER"},
    {"low-heat-thaw-first", CautionLevel::Card, slow_cooker_safety,
     passes<Passage::KeptCold, Heat::Low>, "THAW FULLY BEFORE COOKING"},
    {"frozen-pressure-cooker", CautionLevel::Card, practice,
     passes<Passage::FrozenByBook, Heat::PressureCooker>, "AS THE PRESSURE COOKER LEAFLET SAYS"},
    {"frozen-grill", CautionLevel::Card, practice, passes<Passage::FrozenUneven, Heat::Grill>},
};

} // namespace

std::span<const CautionRule> pairing_rules() {
    return pairing_rows;
}

} // namespace thawslip::kitchen
