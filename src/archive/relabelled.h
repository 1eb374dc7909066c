#pragma once

#include "archive/values.h"

namespace thawslip::archive {

/// Whether a label of `before` is wrong about `now` where that harms: about what is in the bag, or
/// by a date to use it by that is sooner now.
bool is_relabelled(const PackageRecord& before, const PackageRecord& now);

} // namespace thawslip::archive
