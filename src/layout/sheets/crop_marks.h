#pragma once

#include "layout/frame.h"
#include "layout/sheets/printable_area.h"
#include "layout/sheets/stock.h"

#include <vector>

namespace thawslip::layout {

/// Half a point: two dots of a 300 dpi printer, one and a half of a 203 dpi one, so that a mark
/// never falls between two rows of dots; and with 0.18 mm still finer than anyone cuts. The
/// quarter point of the print trade is one dot, which cheap printers and photocopies lose.
inline constexpr Length crop_mark_thickness = Length::points(0.5);
inline constexpr Length crop_mark_length = Length::millimetres(5);
/// From the corner of the cells to the mark, so that a cut a little off shows no ink.
inline constexpr Length crop_mark_offset = Length::millimetres(3);

/// Where to cut: a mark at both ends of every line along which cells end, outside the cells and
/// inside what the printer reaches. A line that two cells share has one pair of marks.
///
/// Where the free edge is narrow, a mark first comes nearer (to 0.5 mm), then gets shorter (to
/// 1 mm). Where the cells fill the sheet, it stands on the cut line itself, inwards from the
/// edge, where the safe margins of the cells beside it keep all else away. A line that lies in
/// the strip the printer cannot reach has none: there the paper's own edge is the cut.
/// \returns nothing for a stock that is not cut by hand
std::vector<Rule> crop_marks(const Stock& stock, const Insets& insets = usual_insets);

/// The marks inside of a cell by which it is cut in two halves, one at each end of the cut.
/// \returns nothing for a stock that is not cut by hand
std::vector<Rule> half_marks(const Stock& stock, int cell);

} // namespace thawslip::layout
