#pragma once

#include "app/surroundings.h"
#include "service/days.h"
#include "service/messages.h"

namespace thawslip::app {

/// Gives the bags of planned days the ids that the archive has for their batches, or that are free
/// there.
/// \returns the days; nothing where they are wrong or something must be answered first
service::Outcome<service::Days> settle(const service::Days& planned, const IdSource& ids,
                                       const service::Settings& settings);

} // namespace thawslip::app
