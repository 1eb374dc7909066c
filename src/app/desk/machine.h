#pragma once

#include "app/desk/day_folder.h"
#include "app/desk/desk_options.h"
#include "desk/machine.h"

namespace thawslip::app {

/// What this computer does for the desk.
desk::Machine machine_for(const DeskPlace& place,
                          const std::function<service::Outcome<Settings>()>& settings);

} // namespace thawslip::app
