#pragma once

#include "kitchen/timeline/timeline.h"

namespace thawslip::kitchen {

/// When a bag with this lead has to start thawing so that it is thawed, and still keeps, at
/// `start`.
///
/// No later than the lead before. No earlier than as long before as it keeps plus the soonest it
/// can be thawed; in water and in the microwave it does not keep, so there the two are one.
/// Where a bag may be thawed too soon and too late at once (thick, and hardly keeping), the later
/// moment stands for both.
/// \param request for the clock and the time now
ThawWindow thaw_window(const ThawLead& lead, Instant start, std::chrono::hours keeps_thawed,
                       const TimelineRequest& request);

/// The first time from `limit` on when somebody is up, by the clock.
Instant earliest_waking(Instant limit, const LocalClock& clock);

/// Whether the two ends met although the bag keeps for a while: see ThawWindowTight.
bool is_tight(const ThawWindow& window);

} // namespace thawslip::kitchen
