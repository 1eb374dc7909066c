#pragma once

#include "kitchen/day.h"

#include <string>
#include <string_view>

namespace thawslip::kitchen {

/// What heats the food, as far as it matters how the food was thawed.
enum class Heat {
    SlowCooker,
    Low, ///< a low oven, a water bath, a setting that only keeps warm or cooks slowly
    Oven,
    Pan,
    Pot,
    Microwave,
    PressureCooker,
    Grill,
    Steamer,
    Other,   ///< words that no rule knows
    Nowhere, ///< the description does not say how it is cooked
};
inline constexpr auto last_heat = Heat::Nowhere;

/// How food that was thawed one way goes into one heat.
enum class Passage {
    Free,         ///< nothing to say
    KeptCold,     ///< fully thawed, and kept in the refrigerator until it goes in
    AtOnce,       ///< as soon as it has thawed, without a pause
    AtOnceHigh,   ///< the same; and the slow cooker runs on high for the first hour
    AtOnceHot,    ///< the same; and the heat is up before it goes in
    Refused,      ///< not safe: warms too slowly for food that is warm in parts, or frozen
    FrozenByBook, ///< from frozen only as the pressure cooker's own instructions say
    FrozenUneven, ///< from frozen it burns outside before the middle is hot: better thawed
};

/// What the rules know of how a dish is cooked: its vessel, the words of its setting, and the
/// gentlest heat that a step names.
struct SaidHeat {
    Heat heat = Heat::Nowhere;
    std::string words; ///< the cook's own, that say so: "oven, 110 °C", or a step
    KeyPath where;
};
SaidHeat said_heat(const Package& package);
Heat heat_of(const Package& package);

/// One row for every pair.
struct Pairing {
    ThawMethod method;
    Heat heat;
    Passage passage;
    std::string_view source; ///< publisher and title
};
const Pairing& pairing(ThawMethod method, Heat heat);

} // namespace thawslip::kitchen
