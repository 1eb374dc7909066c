#pragma once

#include "archive/values.h"
#include "service/freezer/freezer_state.h"
#include "service/now.h"

namespace thawslip::app {

/// This computer, as the archive knows it, and what its clocks say now. Where the clock is fixed
/// (app/clock.h), nothing is said of when the system was started.
archive::Station station_now();

/// When and where something is noted that happens now.
service::Moment moment_now();

/// What a proposal of dinners asks of the clock: from a month ago to a year on.
service::Now now_here();

} // namespace thawslip::app
