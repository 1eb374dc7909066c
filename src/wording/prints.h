#pragma once

#include "kitchen/plan.h"
#include "wording/print.h"
#include "wording/style.h"

#include <vector>

namespace thawslip::wording {

// One function a print: kitchen values in, words out. What its code says is the business of
// another layer; here it is only said that there is one.

/// What is stuck on the bag before it is filled.
Print bag_label(const kitchen::Plan& plan, const kitchen::PlannedPackage& planned,
                const kitchen::Bag& bag, const Style& style);

/// What is taped to the bag with the small bags. Only for a package that has finishing
/// ingredients or sides.
Print finishing_card(const kitchen::Plan& plan, const kitchen::PlannedPackage& planned,
                     const kitchen::Bag& bag, const Style& style);

/// All in which the labels, or the finishing cards, of a dish's bags differ: which bag it is, and
/// its id.
std::vector<Field> bag_fields(const kitchen::Bag& bag, const Style& style);

/// What lies beside the stove, one a dish.
Print cook_day_card(const kitchen::Plan& plan, const kitchen::PlannedPackage& planned,
                    const Style& style);

} // namespace thawslip::wording
