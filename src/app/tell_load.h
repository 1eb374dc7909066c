#pragma once

#include "kitchen/plan.h"
#include "kitchen/unit_style.h"

#include <iosfwd>

namespace thawslip::app {

/// Whether the freezer can take the day's bags at once, and if not, which of them go in on which
/// day; which bags have no weight and could not be counted. \pre plan.freezer_load
void tell_load(const kitchen::Plan& plan, const kitchen::UnitStyle& style, std::ostream& out);

} // namespace thawslip::app
