#pragma once

#include "kitchen/day.h"
#include "kitchen/storage/storage.h"

namespace thawslip::kitchen {

/// Whether frozen food may go into this vessel: oven or stove (USDA FSIS, The Big Thaw: Safe
/// Defrosting Methods, 2013, "Cooking Without Thawing", read in a copy). Nothing is published for
/// the others, and a slow cooker must never take it.
bool takes_frozen(Vessel vessel);

/// Half as long again, rounded up to 5 minutes: a time for thawed meat, turned into one from
/// frozen. USDA FSIS, as above, "approximately 50% longer than the recommended time for fully
/// thawed or fresh meats and poultry" (read in a copy): it says nothing of other food.
TimeRange from_frozen(TimeRange thawed);

/// Whether `from_frozen` may be used for a package: all of its food is raw meat or poultry, and it
/// is cooked in an oven, a pan or a pot.
bool may_count_from_frozen(const Package& package, const StorageTable& table);

/// The package with the one cooking time that counts for how its food starts to cook. A time
/// that is said to be for thawed food of a bag that is cooked from frozen is converted where
/// that may be, and says so in `time_from`; all others stay.
Package with_time_as_cooked(Package package, const StorageTable& table);

} // namespace thawslip::kitchen
