#pragma once

#include "layout/areas/entry.h"
#include "layout/areas/text_area.h"

#include <cstddef>
#include <vector>

namespace thawslip::layout {

/// A head that is said again where what it heads runs on.
struct HeadAgain {
    std::size_t entry = 0;
    double top = 0.0;
    double bottom = 0.0;
};

/// Where one entry stands, in leadings of the area's type from the top of the area.
struct StackedEntry {
    double top = 0.0;
    double bottom = 0.0;
    std::vector<double> cells = {};    ///< the top of each cell of a row
    int strip = 0;                     ///< which strip it stands in, from the left
    bool opens = false;                ///< first of its strip: it says what the row above says too
    std::vector<HeadAgain> heads = {}; ///< what is said again above it, from the top
};

/// The entries of an area one below the other, and how high they are in all.
struct Stack {
    std::vector<StackedEntry> entries;
    double height = 0.0;
};

/// Stacks what stands in an area. The cells of a row begin side by side, and the next row begins
/// below the highest; where the area's columns flow, each cell of a row of text begins below the
/// one above it in its own column, and cells that say nothing take no room.
///
/// Where strips stand side by side, entries run down one after the other, and the strips are as
/// low as can be: so they are of even height. A heading stays with the row below it, and where the
/// area keeps them whole, with all below it. Strips part rows below one head only where they would
/// else be much less even. What heads the first entry of a strip and stands in the one before is
/// said again.
Stack stack(const Content& content, const TextArea& area, const Columns& columns);

} // namespace thawslip::layout
