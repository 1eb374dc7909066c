#pragma once

#include "kitchen/plan.h"
#include "wording/goods.h"
#include "wording/print.h"
#include "wording/style.h"

#include <span>

namespace thawslip::wording {

/// What to buy, added up across the dishes of all days: for the day before, for packing day and for
/// cook day, with boxes to tick and the numbers of the dishes that it is for; and which dish each
/// number is. Below each day goods stand by their kinds; water is not bought. Of several days each
/// has a letter: "A1, B3". Its field "shopping" is empty where nothing is listed.
Print shopping_sheet(std::span<const kitchen::Plan> plans, const Goods& goods, const Style& style);

} // namespace thawslip::wording
