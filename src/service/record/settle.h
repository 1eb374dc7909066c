#pragma once

#include "service/days.h"
#include "service/messages.h"
#include "service/print/surroundings.h"

namespace thawslip::service {

/// Gives the bags of planned days the ids that the archive has for their batches, or that are free
/// there.
/// \returns the days; nothing where they are wrong or something must be answered first
Outcome<Days> settle(const Days& planned, const IdSource& ids, const Settings& settings);

} // namespace thawslip::service
