#pragma once

#include "app/data_folder.h"
#include "app/job.h"
#include "app/own_files.h"
#include "base/result.h"
#include "layout/compose.h"

#include <vector>

namespace thawslip::app {

/// Everything a job is laid out with.
struct Setup {
    typeset::FontSet fonts;
    DataFolder data;
    std::string stock;                   ///< the name or file of the stock, as it was chosen
    OwnFiles own;                        ///< what was read of the cook's own files
    std::vector<layout::Layout> layouts; ///< all shipped ones
    layout::Target target;
    layout::Layouts chosen; ///< the layout of each kind of print in the job
};

/// A job with all its sizes found, ready to be drawn.
struct LaidOut {
    Setup setup;
    layout::Fitting fitting;
};

/// Chooses stock and layouts and fits every print. What stands against it is said on
/// `console.err`, placed in the days' files.
/// \returns the job laid out, or the status to leave with
Result<LaidOut, ExitStatus> lay_out(const Job& job, const Days& days, const PrintOptions& options,
                                    const Settings& settings, Console console);

} // namespace thawslip::app
