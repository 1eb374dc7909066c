#pragma once

#include "kitchen/timeline/timeline.h"
#include "wording/print.h"
#include "wording/style.h"

#include <span>

namespace thawslip::wording {

/// The plan of a dinner of several dishes as one list to be ticked off: what is too late as
/// planned, then day by day, at each time, what is to be done with which dish and what to mind. It
/// says all that the sheets of the lanes say (plan_sheet.h), in one row. \pre the timeline is of
/// these dishes
Print plan_in_order(const kitchen::Timeline& line, std::span<const kitchen::TimelineDish> dishes,
                    const Style& style);

} // namespace thawslip::wording
