#pragma once

#include "app/commands.h"
#include "app/files/day_files.h"
#include "service/print/job.h"

namespace thawslip::app {

/// Says on `console.err` which bags, whose labels a job prints, are noted as gone and get a label
/// again all the same, as far as there is an archive.
void report_gone(const service::Job& job, const Days& days, const Settings& settings,
                 Console console);

} // namespace thawslip::app
