#pragma once

#include "kitchen/timeline/timeline.h"

namespace thawslip::kitchen {

struct FasterWays {
    std::vector<FasterWay> ways; ///< those that still fit, in the agencies' order of preference
    std::optional<Instant> soonest_ready; ///< by the quickest of all ways; nothing if there is none
};

/// The refrigerator on a rack, where the bag was to lie slower there, cold water, microwave and
/// from frozen for one dish: those that get it ready by `eat` when begun no earlier than `now`.
/// Without a usable cooking time it need only be thawed by `eat`. None for what is eaten as it is:
/// in water its outside gets too warm, and the microwave is for food that is cooked at once (FDA
/// Food Code 3-501.13). From frozen only where a time for that is published.
FasterWays faster_ways(const TimelineDish& dish, const ThawSettings& settings, Instant eat,
                       Instant now);

} // namespace thawslip::kitchen
