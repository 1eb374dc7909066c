#pragma once

#include "kitchen/heat/thaw_lead.h"

#include <chrono>
#include <optional>

namespace thawslip::kitchen {

/// Where a bag that was filled hot gets cold in time.
enum class CoolingWay {
    AsPlaced,   ///< in the refrigerator, as it is placed there
    OnRack,     ///< in the refrigerator, but only on a rack
    IceWater,   ///< in ice water
    BeforeBags, ///< not in the bag: it is too thick
    FilledCold  ///< it is not filled hot: there is raw food in it beside what is cooked
};

/// Cooling times with the settings' margin, rounded up to 5 minutes; nothing: more than a day.
struct CoolingSpans {
    std::optional<std::chrono::minutes> to_21; ///< from 57 °C
    std::optional<std::chrono::minutes> to_5;  ///< from 57 °C
};

/// What to do with a bag that was filled hot, so that it passes the marks of cooling_time.h; and
/// that another is not filled hot, then without times.
struct CoolingAdvice {
    Placing placing = Placing::Tray;
    CoolingWay way = CoolingWay::AsPlaced;
    CoolingSpans as_placed = {};
    CoolingSpans on_rack = {};
    CoolingSpans in_ice_water = {};

    /// The thickest bag, in whole millimetres, that ice water still cools in time.
    Length thickest_in_ice = {};
};

/// \returns nothing where the thickness is not known
std::optional<CoolingAdvice> cooling_advice(std::optional<Length> thickness,
                                            std::optional<Mass> weight,
                                            const ThawSettings& settings);

} // namespace thawslip::kitchen
