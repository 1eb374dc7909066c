#pragma once

#include "app/commands.h"
#include "app/day_files.h"

#include <optional>

namespace thawslip::app {

/// What the ids are for. Lists are not remembered, and take no answer that makes new ids.
enum class IdsFor { Prints, Lists };

/// Gives the bags of days that are to be printed the ids that the archive has for their batches, or
/// that are free there. What only the cook can know is asked on `console.err`, but for a trial,
/// whose ids stick on nothing. What is not to be remembered is asked about all the same, by a copy
/// of the archive; where that cannot be read, this is said, and the ids are as planned.
/// \returns the days; nothing where something must be answered first
/// \throws SystemFailure where an archive that is needed cannot be read
std::optional<Days> settle(const Days& planned, const PrintOptions& options,
                           const Settings& settings, Console console, IdsFor what = IdsFor::Prints);

/// The same for who only looks: where `labels` would ask, this is said, and the ids are those that
/// other bags would get.
Days settle_to_look(const Days& planned, const Settings& settings, Console console);

} // namespace thawslip::app
