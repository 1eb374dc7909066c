#pragma once

#include "kitchen/timeline/timeline.h"

#include <span>
#include <vector>

namespace thawslip::kitchen {

/// A remark for each dish, or what is cooked beside one, that is in an appliance while something
/// before it is in one of the same kind, with from when to when. Pots and pans are no appliances: a
/// kitchen has several, and a place on the stove for each.
/// \param dishes as planned, one for each of the request
std::vector<TimelineRemark> shared_appliances(const TimelineRequest& request,
                                              std::span<const DishTimeline> dishes);

} // namespace thawslip::kitchen
