#pragma once

#include "kitchen/plan.h"
#include "wording/print.h"
#include "wording/style.h"

namespace thawslip::wording {

/// The sheet that lies on the table on the packing day: for each dish how many bags, what goes
/// into them and what stays out, with boxes to tick; then how to cool, and what goes into the
/// freezer when. Runs on over as many pages as it needs.
Print day_sheet(const kitchen::Plan& plan, const Style& style);

/// What to buy, added up across the dishes, for the day and for cook day, with boxes to tick. Its
/// field "shopping" is empty where nothing is listed.
Print shopping_sheet(const kitchen::Plan& plan, const Style& style);

} // namespace thawslip::wording
