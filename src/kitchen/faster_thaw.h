#pragma once

#include "kitchen/timeline.h"

namespace thawslip::kitchen {

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
