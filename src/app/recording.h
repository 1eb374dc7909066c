#pragma once

#include "app/lay_out.h"

namespace thawslip::app {

/// Tells the archive what was printed, once it is on disk, and the user what of it is new.
/// \throws SystemFailure where the archive fails; what was printed stays
void record_print(const Job& job, const Days& days, const LaidOut& laid_out,
                  const PrintOptions& options, const Settings& settings, Console console);

} // namespace thawslip::app
