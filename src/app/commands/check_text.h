#pragma once

#include "kitchen/measures/unit_style.h"
#include "kitchen/plan.h"
#include "wording/style.h"

#include <iosfwd>

namespace thawslip::app {

/// "minimum: 165 °F (74 °C), "Casseroles" (FoodSafety.gov, …; read): that counts": which publisher
/// said how hot a dish must get, and what the others say beside it. Nothing for a dish that has no
/// minimum.
void show_minimum(const kitchen::PlannedPackage& planned, const kitchen::UnitStyle& style,
                  std::ostream& out);

/// Whether the freezer can take the day's bags at once, and if not, which of them go in on which
/// day, and what else there is to know of them. \pre plan.freezer_load
void show_load(const kitchen::Plan& plan, const kitchen::UnitStyle& style, std::ostream& out);

/// How much room the day's bags need in the freezer, beside what it holds already. Nothing where no
/// bag has a weight or a thickness.
void show_room(const kitchen::Plan& plan, const wording::Style& style, std::ostream& out);

} // namespace thawslip::app
