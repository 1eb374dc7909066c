#pragma once

#include "kitchen/plan.h"

namespace thawslip::kitchen {

// The figures that prints, lists, plans, codes and readings share. Whatever says one of them takes
// it from here, so that no two surfaces differ.

/// How long a package thaws, as it is printed: from when to look, and what to allow; one number
/// where they are the same. Nothing where it does not thaw, or where a time would be a guess.
std::optional<TimeRange> thaw_time(const PlannedPackage& planned);

/// What to allow of `thaw_time`: the one number of lists.
std::optional<std::chrono::minutes> allowed_thaw(const PlannedPackage& planned);

/// Within how many days of being thawed it must be cooked; nothing where it is cooked at once or
/// on the same day, or no list says anything.
std::optional<std::chrono::days> cook_within(const PlannedPackage& planned);

} // namespace thawslip::kitchen
