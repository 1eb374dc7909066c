#pragma once

#include "app/day_files.h"

#include <iosfwd>

namespace thawslip::app {

/// Says, with its place, what every command that prints has to say of the days and no print can:
/// cautions of level Report, each once, and bags that the freezer has no place for.
void report_cautions(const Days& days, const Settings& settings, std::ostream& err);

} // namespace thawslip::app
