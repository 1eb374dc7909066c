#pragma once

#include "kitchen/plan.h"
#include "wording/print.h"
#include "wording/style.h"

namespace thawslip::wording {

/// The sheet that lies on the table on the packing day: for each dish, under its number of the day,
/// what goes into the bags and what stays out, with boxes to tick, and a box for each bag; then how
/// to cool, and what goes into the freezer when. Runs on over as many pages as it needs.
Print day_sheet(const kitchen::Plan& plan, const Style& style);

/// What to buy, added up across the dishes, for the day and for cook day, with boxes to tick and
/// the numbers of the dishes that it is for; and which dish each number is. Its field "shopping" is
/// empty where nothing is listed.
Print shopping_sheet(const kitchen::Plan& plan, const Style& style);

} // namespace thawslip::wording
