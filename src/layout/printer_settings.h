#pragma once

#include "layout/frame.h"
#include "layout/printable_area.h"

namespace thawslip::toml {
class Table;
}

namespace thawslip::layout {

/// What is known about a printer: how to put right what it does to a page, and what it reaches.
struct Printer {
    Correction correction;
    Insets unprinted = usual_insets;
};

/// Reads the settings' table `[printer]`, as the ruler page tells one to write it:
///
///     paper     = "a4"                       # that the ruler page was printed on; or sheet = […]
///     cross_a   = ["30.5 mm", "29.5 mm"]     # across, down; cross_b, cross_c, cross_d likewise
///     unprinted = ["4 mm", "4 mm", "12 mm", "4 mm"]   # top, right, bottom, left
///
/// Three crosses are enough; none at all mean no correction. What is wrong, readings that make
/// no sense among it, is reported through the table's reader, and then not applied.
Printer read_printer(toml::Table& table);

} // namespace thawslip::layout
