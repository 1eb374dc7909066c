#pragma once

#include "desk/machine.h"

namespace thawslip::desk {

/// What one run of the desk knows from one request to the next.
struct Session {
    Machine machine;
};

} // namespace thawslip::desk
