#pragma once

#include "kitchen/cautions/caution.h"
#include "kitchen/day.h"
#include "kitchen/storage/storage.h"

#include <vector>

namespace thawslip::kitchen {

/// The package as it is where it is thawed by another method that the cook names, or cooked from
/// frozen.
///
/// The cooking time is written for food as it starts to cook by the first method. From frozen to
/// thawed, or back, it holds only where it is said to, or where a time from frozen is published
/// (may_count_from_frozen of cook_time.h); else no time is known, and the middle of the food tells.
Package thawed_by(const Package& package, const OtherMethod& other, const StorageTable& table);

/// Adds to the cautions of the first method what is to be minded only by another one.
void add_cautions_of(ThawMethod method, const std::vector<Caution>& others,
                     std::vector<Caution>& cautions);

} // namespace thawslip::kitchen
