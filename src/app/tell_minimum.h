#pragma once

#include "kitchen/measures/unit_style.h"
#include "kitchen/plan.h"

#include <iosfwd>

namespace thawslip::app {

/// "minimum: 165 °F (74 °C), "Casseroles" (FoodSafety.gov, …; read): that counts": which publisher
/// said how hot a dish must get, and what the others say beside it. Nothing for a dish that has no
/// minimum.
void tell_minimum(const kitchen::PlannedPackage& planned, const kitchen::UnitStyle& style,
                  std::ostream& out);

} // namespace thawslip::app
