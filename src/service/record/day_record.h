#pragma once

#include "archive/values.h"
#include "service/days.h"

namespace thawslip::service {

/// What the archive keeps of a package, its bags with the ids that they were planned with.
archive::PackageRecord record_of(const kitchen::PlannedPackage& planned);

/// What the archive keeps of a day, its bags with the ids that they were planned with.
/// \param day index into `days.plans`
archive::DayRecord record_of(const Days& days, std::size_t day);

} // namespace thawslip::service
