#pragma once

#include "base/geometry.h"

#include <string>
#include <vector>

namespace thawslip::layout {

/// The geometry of one label sheet, card sheet or roll. All lengths as a ruler measures them,
/// from the sheet's top left corner.
struct Stock {
    std::string name;  ///< what a ruler says: "letter-2x5-4x2in"
    std::string about; ///< one line for `stock list`
    Size sheet;
    Size cell;
    int columns = 1;
    int rows = 1;
    Point first; ///< top left corner of the first cell
    Size pitch;  ///< from one cell's corner to the next one's
    Length corner_radius;
    Length safe_margin; ///< kept free of ink inside each cell
    bool cut = false;   ///< plain paper, cut by hand: crop marks are drawn
    bool roll = false;  ///< one cell a page

    int cells() const { return columns * rows; }
    /// Cell `index`, from 0, along rows. \pre 0 <= index < cells()
    Rect cell_at(int index) const;
};

/// Where things go on sheets: how many prints, which cells are already used up.
struct Imposition {
    int first_cell = 1;             ///< from 1: cells before it on the first sheet are used up
    std::vector<int> spoiled_cells; ///< from 1, on the first sheet
};

struct Place {
    int sheet = 0; ///< from 0
    int cell = 0;  ///< from 0
};

/// The cells that `count` prints take, in order, sheet after sheet.
/// \pre 1 <= first_cell <= cells()
std::vector<Place> impose(const Stock& stock, int count, const Imposition& imposition);

} // namespace thawslip::layout
