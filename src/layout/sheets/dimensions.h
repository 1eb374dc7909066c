#pragma once

#include "layout/sheets/stock.h"

#include <string>
#include <vector>

namespace thawslip::layout {

/// One length of a stock as a ruler takes it, and the line on the sheet along which it is taken.
struct Dimension {
    enum class Direction { Across, Down };
    std::string what; ///< "cell, across"
    Direction direction = Direction::Across;
    Length from; ///< on the sheet, along the direction
    Length to;
    int level = 0; ///< its line in a drawing: edges, cell and gutter 0; pitch 1; paper 2

    Length length() const { return to - from; }
};

/// What one would measure with a ruler to describe this stock: edges, cell, gutter, pitch and
/// paper, across and then down; those that are nothing are left out.
std::vector<Dimension> dimensions(const Stock& stock);

/// "4 3/16 in (106.36 mm)" on a stock made in inches; "99 mm" on others, and of lengths that have
/// no place on an inch ruler.
std::string ruler_text(Length length, const Stock& stock);

/// The stock in whole lines: paper, cells, margins, what it is made for.
std::vector<std::string> in_words(const Stock& stock);

} // namespace thawslip::layout
