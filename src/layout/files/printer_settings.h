#pragma once

#include "layout/frame.h"
#include "layout/sheets/printable_area.h"

#include <span>
#include <vector>

namespace thawslip::toml {
class Table;
}

namespace thawslip::layout {

/// What is known about printing on one paper: how to put right what the printer does to a page,
/// and what of it the printer reaches.
struct Printer {
    Size paper; ///< as it lies before the reader: landscape is another paper than upright
    Correction correction;
    Insets unprinted = usual_insets;
};

/// Reads the `[[printer]]` tables of the settings, one for each paper that was measured, as the
/// ruler page tells one to write them:
///
///     [[printer]]
///     paper     = "a4"                       # that the ruler page was printed on; or sheet = […]
///     cross_a   = ["30.5 mm", "29.5 mm"]     # across, down; cross_b, cross_c, cross_d likewise
///     unprinted = ["4 mm", "4 mm", "12 mm", "4 mm"]   # top, right, bottom, left
///
/// Three crosses are enough; none at all mean no correction. What is wrong, readings that make
/// no sense among it, is reported through the table's reader, and then not applied.
std::vector<Printer> read_printers(toml::Table& settings);

/// What was measured for paper of this size. Paper that lies differently in the tray is moved
/// differently, so for one that nobody measured there is no correction, and the usual margins.
Printer printer_for(std::span<const Printer> printers, Size paper);

} // namespace thawslip::layout
