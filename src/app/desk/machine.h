#pragma once

#include "app/desk/day_folder.h"
#include "app/desk/desk_options.h"
#include "desk/machine.h"

namespace thawslip::app {

/// What this computer does for the desk.
/// \param settings_file where the settings are written that the page sets
desk::Machine machine_for(const DeskPlace& place,
                          const std::function<service::Outcome<Settings>()>& settings,
                          const std::string& settings_file);

} // namespace thawslip::app
