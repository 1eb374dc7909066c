#pragma once

#include "app/day_files.h"
#include "archive/values.h"

namespace thawslip::app {

/// What the archive keeps of a day, its bags with the ids that they were planned with.
/// \param day index into `days.plans`
archive::DayRecord record_of(const Days& days, std::size_t day);

} // namespace thawslip::app
