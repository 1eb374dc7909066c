#pragma once

#include "kitchen/plan.h"
#include "wording/print.h"
#include "wording/style.h"

#include <string>

namespace thawslip::wording {

/// The day sheet's last section: how to cool, whether the freezer takes the bags at once, and if
/// not, which of them go in on which day, a row with a box to tick for each dish of a batch.
Field freezing_field(const kitchen::Plan& plan, const Style& style);

/// The same without the freezer: how to cool.
Field cooling_field(const kitchen::Plan& plan, const Style& style);

/// What holds for the whole packing day, a sentence each.
void add_day_cautions(Field& field, const kitchen::Plan& plan, const Style& style);

std::string say_bag_count(std::size_t bags, const Style& style); ///< "1 bag", "3 bags"

} // namespace thawslip::wording
