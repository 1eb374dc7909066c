#pragma once

#include "kitchen/timeline.h"

namespace thawslip::kitchen {

/// A safe way to the table for a bag that is still frozen at the moment it is asked for.
struct FasterWay {
    ThawMethod method = ThawMethod::ColdWater;
    Instant begin; ///< when it goes into the water or the microwave: the latest that serves
    Instant start; ///< when cooking starts; equal to `begin` from frozen
    std::chrono::minutes takes{0}; ///< the cooking
};

struct FasterWays {
    std::vector<FasterWay> ways; ///< those that still fit, in the agencies' order of preference
    std::optional<Instant> soonest_ready; ///< by the quickest of all ways; nothing if there is none
};

/// Cold water, microwave and from frozen for one dish: those that get it ready by `eat` when begun
/// no earlier than `now`. Without a usable cooking time it need only
/// be thawed by `eat`.
FasterWays faster_ways(const Package& package, const ThawSettings& settings, Instant eat,
                       Instant now);

} // namespace thawslip::kitchen
