#pragma once

#include "kitchen/date.h"
#include "kitchen/timeline/local_clock.h"

namespace thawslip::service {

/// When something is asked, and what the kitchen clock shows around it.
struct Now {
    kitchen::Date today;
    kitchen::Instant instant;
    kitchen::LocalClock clock;
};

} // namespace thawslip::service
