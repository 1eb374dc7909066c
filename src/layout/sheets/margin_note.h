#pragma once

#include "layout/frame.h"
#include "layout/sheets/printable_area.h"
#include "layout/sheets/stock.h"
#include "typeset/face.h"

#include <string_view>

namespace thawslip::layout {

/// Writes words across the head or the foot of a sheet, whichever has more room, where no cell
/// prints and the printer reaches.
/// \returns whether there is room for them at the least x-height of type
bool write_margin_note(Frame& frame, std::string_view words, const Stock& stock,
                       const Insets& unprinted, const typeset::FontSet& fonts);

} // namespace thawslip::layout
