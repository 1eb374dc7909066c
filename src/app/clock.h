#pragma once

#include "kitchen/date.h"

namespace thawslip::app {

/// Today where the program runs. Only app/ asks the clock.
kitchen::Date today();

} // namespace thawslip::app
