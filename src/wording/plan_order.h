#pragma once

#include "kitchen/timeline/timeline.h"
#include "wording/print.h"
#include "wording/style.h"

#include <span>

namespace thawslip::wording {

/// The plan of a dinner of several dishes as one list to be ticked off: day by day, at each time
/// what is to be done with which dish. What else there is to know of it, and what to mind, stands
/// on the sheets of the lanes (plan_sheet.h).
/// \pre the timeline is of these dishes
Print plan_in_order(const kitchen::Timeline& line, std::span<const kitchen::TimelineDish> dishes,
                    const Style& style);

} // namespace thawslip::wording
