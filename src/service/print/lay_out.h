#pragma once

#include "layout/compose.h"
#include "service/messages.h"
#include "service/print/job.h"
#include "service/print/look.h"
#include "service/print/own_files.h"
#include "service/print/surroundings.h"

#include <optional>
#include <vector>

namespace thawslip::service {

/// Everything a job is laid out with.
struct Setup {
    typeset::FontSet fonts;
    std::string stock;                   ///< the name or file of the stock, as it was chosen
    std::string stock_text;              ///< what it was read from
    std::string layout;                  ///< the layout that was asked for; empty: none
    OwnFiles own;                        ///< what was read of the cook's own files
    std::vector<ShippedText> texts;      ///< of the shipped layouts
    std::vector<layout::Layout> layouts; ///< the same, read, and in large print where that is set
    bool is_large_print = false;
    std::optional<layout::Layout> given; ///< the one that was asked for, read
    layout::Medium medium;
    layout::Layouts chosen; ///< the layout of each kind of print in the job
};

/// A job with all its sizes found, ready to be drawn.
struct LaidOut {
    Setup setup;
    layout::Fitting fitting;
};

/// Chooses stock and layouts and fits every print. What stands against it is placed in the days'
/// texts.
Outcome<LaidOut> lay_out(const Job& job, const Days& days, const Look& look,
                         const Settings& settings, const Surroundings& around);

/// Everything on sheet `sheet` (from 0) of a job. Sheets are drawn one by one: of ten thousand
/// labels no more than one is held.
layout::Frame draw_sheet(const LaidOut& laid_out, int sheet);

/// What the layouts left out for want of room: nothing leaves a print in silence.
Messages left_out(const LaidOut& laid_out, const Job& job, const Days& days);

} // namespace thawslip::service
