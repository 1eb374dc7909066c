#pragma once

#include "kitchen/plan.h"
#include "kitchen/timeline/timeline.h"

namespace thawslip::service {

/// A planned package and all its bags as a dish for the table.
kitchen::TimelineDish timeline_dish(const kitchen::PlannedPackage& planned);

} // namespace thawslip::service
