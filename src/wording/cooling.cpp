#include "wording/cooling.h"

#include "kitchen/measures/unit_text.h"
#include "wording/phrases.h"
#include "wording/typography.h"

namespace thawslip::wording {
namespace {

std::string span(std::optional<std::chrono::minutes> time, const Style& style) {
    return time ? say_duration(*time, style.language) : style.say("cooling.long");
}

std::string_view key_of(kitchen::CoolingWay way) {
    switch (way) {
    case kitchen::CoolingWay::AsPlaced: return "cooling.as-placed";
    case kitchen::CoolingWay::OnRack: return "cooling.on-rack";
    case kitchen::CoolingWay::IceWater: return "cooling.ice-water";
    case kitchen::CoolingWay::FilledCold: return "cooling.filled-cold";
    case kitchen::CoolingWay::BeforeBags: break;
    }
    return "cooling.before";
}

/// The spans of the way that is advised.
const kitchen::CoolingSpans& advised(const kitchen::CoolingAdvice& advice) {
    switch (advice.way) {
    case kitchen::CoolingWay::AsPlaced: return advice.as_placed;
    case kitchen::CoolingWay::OnRack: return advice.on_rack;
    case kitchen::CoolingWay::IceWater:
    case kitchen::CoolingWay::FilledCold:
    case kitchen::CoolingWay::BeforeBags: break;
    }
    return advice.in_ice_water;
}

} // namespace

std::string say_cooling(const kitchen::CoolingAdvice& advice, const Style& style) {
    const auto mark = [&](double fahrenheit) { return say_cold_limit(fahrenheit, style); };
    const auto& there = advised(advice);
    auto placing = say_placing(advice.placing, style.language);
    if (advice.way == kitchen::CoolingWay::OnRack) {
        placing = capitalised(placing); // there it begins a sentence
    }
    return style.say(key_of(advice.way),
                     {placing, mark(70), span(there.to_21, style), mark(41),
                      span(there.to_5, style), span(advice.as_placed.to_21, style),
                      span(advice.as_placed.to_5, style),
                      kitchen::thickness_text(advice.thickest_in_ice, style.units)});
}

} // namespace thawslip::wording
