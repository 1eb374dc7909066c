#pragma once

#include "archive/values.h"

namespace thawslip::app {

/// This computer, as the archive knows it, and what its clocks say now. Where the clock is fixed
/// (app/clock.h), nothing is said of when the system was started.
archive::Station station_now();

} // namespace thawslip::app
