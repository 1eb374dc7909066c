#pragma once

#include "kitchen/measures/unit_style.h"
#include "kitchen/plan.h"

#include <span>
#include <string>
#include <vector>

namespace thawslip::service {

/// What the cook has to do today about bags that the freezer's plan has no place for: how much
/// must go elsewhere, which bags are too heavy, which have no weight. Empty where all have one,
/// and where the freezer's size is not known.
std::vector<std::string> load_troubles(const kitchen::Plan& plan, const kitchen::UnitStyle& style);

/// Where several packing days of one kitchen put more into its freezer on a date than it takes in
/// 24 h: each day's batches count on the whole freezer.
std::vector<std::string> shared_freezer_troubles(std::span<const kitchen::Plan> plans,
                                                 const kitchen::UnitStyle& style);

/// "Squash and red lentil stew (A, B); Plum and ginger compote (C)": bags by their dishes.
std::string bags_text(const kitchen::Plan& plan, const std::vector<std::string>& bags);

} // namespace thawslip::service
