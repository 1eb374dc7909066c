#pragma once

#include "archive/values.h"
#include "service/days.h"

namespace thawslip::service {

/// What the archive keeps of a day, its bags with the ids that they were planned with.
/// \param day index into `days.plans`
archive::DayRecord record_of(const Days& days, std::size_t day);

} // namespace thawslip::service
