#pragma once

#include "service/days.h"
#include "service/messages.h"

namespace thawslip::service {

/// What every command that prints has to say of the days and no print can: cautions of level
/// Report, each once and at its place, and bags that the freezer has no place for.
Messages cautions_of(const Days& days, const Settings& settings);

} // namespace thawslip::service
