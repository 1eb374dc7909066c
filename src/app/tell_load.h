#pragma once

#include "kitchen/measures/unit_style.h"
#include "kitchen/plan.h"

#include <iosfwd>
#include <span>
#include <string>
#include <vector>

namespace thawslip::app {

/// Whether the freezer can take the day's bags at once, and if not, which of them go in on which
/// day, and what else there is to know of them. \pre plan.freezer_load
void tell_load(const kitchen::Plan& plan, const kitchen::UnitStyle& style, std::ostream& out);

/// What the cook has to do today about bags that the freezer's plan has no place for: how much
/// must go elsewhere, which bags are too heavy, which have no weight. Empty where all have one,
/// and where the freezer's size is not known.
std::vector<std::string> load_troubles(const kitchen::Plan& plan, const kitchen::UnitStyle& style);

/// Where several packing days of one kitchen put more into its freezer on a date than it takes in
/// 24 h: each day's batches count on the whole freezer.
std::vector<std::string> shared_freezer_troubles(std::span<const kitchen::Plan> plans,
                                                 const kitchen::UnitStyle& style);

} // namespace thawslip::app
