#pragma once

#include "kitchen/plan.h"
#include "wording/print.h"
#include "wording/style.h"

#include <vector>

namespace thawslip::wording {

/// What a page of the day sheet is for.
enum class SheetPer {
    Day,    ///< everything
    Station ///< the dishes of one `station`; a dish without one is a station of its own
};

/// The sheets that lie on the table: for each dish, under its number of the day, what goes into the
/// bags and what stays out, with boxes to tick, and a box for each bag; then how to cool, what goes
/// into the freezer when, and how much room it takes there. What is made ready on the day before
/// has a sheet of its own, before that. Each runs on over as many pages as it needs.
std::vector<Print> day_sheets(const kitchen::Plan& plan, SheetPer per, const Style& style);

/// "The day before", "2 days before": how long before the packing day things are made ready.
/// \pre plan.prepared
std::string say_before(const kitchen::Plan& plan, const Style& style);

} // namespace thawslip::wording
