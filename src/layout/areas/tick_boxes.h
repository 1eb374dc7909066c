#pragma once

#include "layout/areas/content.h"

namespace thawslip::layout {

inline constexpr double tick_box_side = 0.72; ///< of a box to tick, in em
inline constexpr double tick_box_text = 1.06; ///< from its left edge to the words beside it, in em
inline constexpr double tick_box_gap = 0.8;   ///< from those words to the next box, in em

/// Boxes to tick in lines, one below the other at equal distances, so that they stand in columns.
struct TickBoxes {
    double pitch = 0.0; ///< from box to box, in em
    int in_line = 1;    ///< how many stand side by side
    int lines = 0;
};

/// How the boxes of an entry stand in `width` em. One that is wider has a line by itself.
TickBoxes tick_boxes(const PreparedEntry& entry, double width);

/// The width in em of its boxes on one line; 0 where it has none.
double tick_boxes_width(const PreparedEntry& entry);

/// The width of its widest box with what stands beside it.
double widest_tick_box(const PreparedEntry& entry);

} // namespace thawslip::layout
