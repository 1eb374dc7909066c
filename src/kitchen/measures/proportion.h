#pragma once

#include "kitchen/measures/quantity.h"

namespace thawslip::kitchen {

/// What is added to a bag of another size: the amount times `factor`, as round as kitchen scales,
/// jugs and spoons show it, and written out in the unit that was written. 1 l for six is 330 ml for
/// two, 3 onions for six are 1. What has no amount ("salt to taste") stays as it is.
/// \pre factor is above 0
Quantity in_proportion(const Quantity& quantity, Amount factor);

} // namespace thawslip::kitchen
