#pragma once

#include "kitchen/date.h"
#include "kitchen/local_clock.h"

namespace thawslip::app {

/// Today where the program runs. Only app/ asks the clock.
kitchen::Date today();

/// Now, to the minute.
kitchen::Instant now();

/// The clock of the time zone the program runs in (TZ, else the system's) between two moments:
/// every change of its offset, found by asking the system (POSIX localtime_r).
kitchen::LocalClock system_clock(kitchen::Instant from, kitchen::Instant to);

} // namespace thawslip::app
