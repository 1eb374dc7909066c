#pragma once

#include "base/diagnostic.h"
#include "base/geometry.h"

#include <string>

namespace thawslip::layout {

/// How much of a cell a print takes: all, or one half of a cell that is cut apart across its longer
/// side.
enum class Part { Whole, FirstHalf, SecondHalf };

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
    Length safe_margin;  ///< kept free of ink inside each cell
    bool cut = false;    ///< plain paper, cut by hand: crop marks are drawn
    bool roll = false;   ///< one cell a page
    bool halves = false; ///< small cards stand two to a cell, which is cut apart for them

    int cells() const { return columns * rows; }
    /// Cell `index`, from 0, along rows. \pre 0 <= index < cells()
    Rect cell_at(int index) const;
    /// The part of cell `index` that may carry ink: the largest upright rectangle, with the
    /// cell's centre, of which every point is at least `safe_margin` inside the cell's edge,
    /// rounded corners included. \pre 0 <= index < cells()
    Rect safe_at(int index) const;
    /// A part of cell `index`, and what of it may carry ink. \pre 0 <= index < cells()
    Rect part_at(int index, Part part) const;
    Rect safe_at(int index, Part part) const;
    /// All cells and the gutters between them.
    Rect block() const;

    friend bool operator==(const Stock&, const Stock&) = default;
};

/// What a stock may be. 14 400 points is the longest side of a PDF's page (ISO 32000-1, Annex C,
/// "Implementation limits", from memory); the rest is good sense.
inline constexpr Length smallest_side = Length::millimetres(10);
inline constexpr Length largest_side = Length::points(14400);
inline constexpr int most_cells = 1000;

/// Everything that is impossible about a geometry, each with its arithmetic and the key of the
/// stock file it belongs to; empty for a stock that can be printed.
Diagnostics check_geometry(const Stock& stock);

} // namespace thawslip::layout
