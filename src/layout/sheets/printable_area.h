#pragma once

#include "base/diagnostic.h"
#include "layout/frame.h"
#include "layout/sheets/stock.h"

#include <vector>

namespace thawslip::layout {

/// The strips along a sheet's edges that a printer cannot reach, as the sheet lies before the
/// reader: a sheet that is read sideways has its margins turned as well.
struct Insets {
    Length top;
    Length right;
    Length bottom;
    Length left;
    friend bool operator==(const Insets&, const Insets&) = default;
};

/// What to expect of a printer nobody has measured: 4.23 mm (1/6 in) on every side, the value
/// that IPP printers commonly report (OpenPrinting CUPS, media margins of 423 hundredths of a
/// millimetre). Inkjets often need more at the bottom: common practice, no source.
inline constexpr Insets usual_insets{Length::millimetres(4.23), Length::millimetres(4.23),
                                     Length::millimetres(4.23), Length::millimetres(4.23)};

/// What of a sheet the printer reaches.
Rect printable_area(Size sheet, const Insets& insets);

/// A cell whose safe area reaches into the strips, and by how much on each side; a side that is
/// not touched has 0.
struct TouchedCell {
    int cell = 0; ///< from 0
    Insets lost;
};

/// The cells of which some part that may carry ink cannot be printed, in order. What a printer
/// reaches is measured on an uncorrected page, so cells are looked at where the correction has
/// them drawn: one that is pushed over the page's edge would be clipped, however well the paper
/// was measured.
std::vector<TouchedCell> touched_cells(const Stock& stock, const Insets& insets,
                                       const Correction& correction = {});

/// A caution for each edge of the sheet at which safe areas are touched: which cells, how many
/// millimetres, and the safe margin that would do. Empty when all can be printed.
Diagnostics check_printable(const Stock& stock, const Insets& insets,
                            const Correction& correction = {});

} // namespace thawslip::layout
