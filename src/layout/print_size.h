#pragma once

#include "layout/sheets/impose.h"
#include "wording/print.h"

namespace thawslip::layout {

/// How much of a cell of this stock prints of a kind take: finishing cards are small, and stand two
/// to a cell where the stock says so.
PrintSize print_size(wording::Kind kind, const Stock& stock);

/// The room that prints of a kind have on this stock, and the paper that they stand on.
Size room_of(wording::Kind kind, const Stock& stock);
Size cell_of(wording::Kind kind, const Stock& stock);

} // namespace thawslip::layout
