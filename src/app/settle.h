#pragma once

#include "app/commands.h"
#include "app/days.h"

#include <optional>

namespace thawslip::app {

/// Gives the bags of days that are to be printed the ids that the archive has for their batches, or
/// that are free there. What only the cook can know is asked on `console.err`.
/// \returns the days; nothing where something must be answered first
/// \throws SystemFailure where the archive cannot be read
std::optional<Days> settle(const Days& planned, const PrintOptions& options,
                           const Settings& settings, Console console);

} // namespace thawslip::app
