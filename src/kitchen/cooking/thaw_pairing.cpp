#include "kitchen/cooking/thaw_pairing.h"

#include "kitchen/cooking/gentle_heat.h"
#include "kitchen/sources.h"

namespace thawslip::kitchen {
namespace {

using enum Passage;

constexpr std::string_view big_thaw =
    "USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013 (read in a copy)";
constexpr std::string_view from_microwave =
    "USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013 (read in a copy); FDA Food Code "
    "3-501.13(C): from the microwave straight to conventional cooking, without interruption";
constexpr std::string_view gentle_source =
    "USDA: cook meat and poultry at 325 °F at least (read); FDA Food Code 3-501.13";

constexpr auto water = ThawMethod::ColdWater;
constexpr auto waves = ThawMethod::Microwave;
constexpr auto fridge = ThawMethod::Refrigerator;
constexpr auto frozen = ThawMethod::FromFrozen;

constexpr Pairing table[] = {
    {fridge, Heat::SlowCooker, KeptCold, slow_cooker_safety},
    {fridge, Heat::Low, KeptCold, slow_cooker_safety},
    {fridge, Heat::Oven, Free, big_thaw},
    {fridge, Heat::Pan, Free, big_thaw},
    {fridge, Heat::Pot, Free, big_thaw},
    {fridge, Heat::Microwave, Free, big_thaw},
    {fridge, Heat::PressureCooker, Free, big_thaw},
    {fridge, Heat::Grill, Free, big_thaw},
    {fridge, Heat::Steamer, Free, big_thaw},
    {fridge, Heat::Other, Free, big_thaw},
    {fridge, Heat::Nowhere, Free, big_thaw},

    {water, Heat::SlowCooker, AtOnceHigh, slow_cooker_safety},
    {water, Heat::Low, AtOnceHot, gentle_source},
    {water, Heat::Oven, AtOnce, big_thaw},
    {water, Heat::Pan, AtOnce, big_thaw},
    {water, Heat::Pot, AtOnce, big_thaw},
    {water, Heat::Microwave, AtOnce, big_thaw},
    {water, Heat::PressureCooker, AtOnce, big_thaw},
    {water, Heat::Grill, AtOnce, big_thaw},
    {water, Heat::Steamer, AtOnce, big_thaw},
    {water, Heat::Other, AtOnce, big_thaw},
    {water, Heat::Nowhere, AtOnce, big_thaw},

    {waves, Heat::SlowCooker, Refused, from_microwave},
    {waves, Heat::Low, Refused, from_microwave},
    {waves, Heat::Oven, AtOnce, from_microwave},
    {waves, Heat::Pan, AtOnce, from_microwave},
    {waves, Heat::Pot, AtOnce, from_microwave},
    {waves, Heat::Microwave, AtOnce, from_microwave},
    {waves, Heat::PressureCooker, AtOnce, from_microwave},
    {waves, Heat::Grill, AtOnce, from_microwave},
    {waves, Heat::Steamer, AtOnce, from_microwave},
    {waves, Heat::Other, AtOnce, from_microwave},
    {waves, Heat::Nowhere, AtOnce, from_microwave},

    {frozen, Heat::SlowCooker, Refused, slow_cooker_safety},
    {frozen, Heat::Low, Refused, gentle_source},
    {frozen, Heat::Oven, Free, big_thaw},
    {frozen, Heat::Pan, Free, big_thaw},
    {frozen, Heat::Pot, Free, big_thaw},
    {frozen, Heat::Microwave, Free, "USDA FSIS, Leftovers and Food Safety (read in a copy)"},
    {frozen, Heat::PressureCooker, FrozenByBook, practice},
    {frozen, Heat::Grill, FrozenUneven, practice},
    {frozen, Heat::Steamer, Free, practice},
    {frozen, Heat::Other, Free, big_thaw},
    {frozen, Heat::Nowhere, Free, big_thaw},
};

constexpr auto heats = static_cast<std::size_t>(last_heat) + 1;

constexpr std::size_t place_of(ThawMethod method, Heat heat) {
    return static_cast<std::size_t>(method) * heats + static_cast<std::size_t>(heat);
}

constexpr bool is_complete() {
    std::size_t place = 0;
    for (const auto& row : table) {
        if (place_of(row.method, row.heat) != place++) {
            return false;
        }
    }
    return place == 4 * heats;
}
static_assert(is_complete(), "one row for every pair, in the order of the enums");

Heat heat_of_vessel(Vessel vessel) {
    switch (vessel) {
    case Vessel::SlowCooker:
    case Vessel::Warmer: return Heat::SlowCooker;
    case Vessel::Oven: return Heat::Oven;
    case Vessel::Pan: return Heat::Pan;
    case Vessel::Pot: return Heat::Pot;
    case Vessel::Microwave: return Heat::Microwave;
    case Vessel::PressureCooker: return Heat::PressureCooker;
    case Vessel::Grill: return Heat::Grill;
    case Vessel::Steamer: return Heat::Steamer;
    case Vessel::Other: break;
    }
    return Heat::Other;
}

} // namespace

Heat heat_of(const Package& package) {
    return said_heat(package).heat;
}

SaidHeat said_heat(const Package& package) {
    if (!package.cook) {
        return {Heat::Nowhere, {}, package.where};
    }
    const auto& cook = *package.cook;
    const auto heat = heat_of_vessel(cook.vessel);
    const auto words = cook.setting.empty() ? cook.in : cook.in + ", " + cook.setting;
    const auto slow = heat == Heat::SlowCooker && is_no_slow_cooker(cook.in) ? Heat::Low : heat;
    if (slow == Heat::SlowCooker || slow == Heat::Low) {
        return {slow, words, cook.where.key("in")};
    }
    if (const auto gentle = gentle_heat(cook)) {
        return {gentle->slow_cooker ? Heat::SlowCooker : Heat::Low,
                gentle->step ? cook.steps[*gentle->step] : words,
                gentle->step ? cook.where.key("steps").index(*gentle->step) : cook.where.key("in")};
    }
    return {heat, words, cook.where.key("in")};
}

const Pairing& pairing(ThawMethod method, Heat heat) {
    return table[place_of(method, heat)];
}

} // namespace thawslip::kitchen
