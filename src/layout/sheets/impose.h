#pragma once

#include "base/diagnostic.h"
#include "layout/sheets/stock.h"

#include <vector>

namespace thawslip::layout {

/// Where things go on sheets: which cells of a half-used first sheet are already used up.
struct Imposition {
    int first_cell = 1;             ///< from 1: cells before it on the first sheet are used up
    std::vector<int> skipped_cells; ///< from 1, on the first sheet; in any order
};

struct Place {
    int sheet = 0; ///< from 0
    int cell = 0;  ///< from 0, along rows, as Stock::cell_at() counts
    Part part = Part::Whole;
    friend bool operator==(const Place&, const Place&) = default;
};

/// What is wrong with an imposition on this stock: numbers that no cell has, or no cell left on
/// the first sheet. Keys are `first_cell` and `skipped_cells[n]`.
Diagnostics check_imposition(const Stock& stock, const Imposition& imposition);

/// The cells that `count` prints take, in order, along rows, sheet after sheet. No cell comes
/// twice, none of the used or skipped ones at all; sheets after the first are whole.
/// \pre count >= 0; check_geometry(stock) and check_imposition(stock, imposition) find nothing
std::vector<Place> impose(const Stock& stock, int count, const Imposition& imposition = {});

/// How large a print is: a cell of the stock, or half of one.
enum class PrintSize { Cell, HalfCell };

/// The same for prints of two sizes: a half that is left over is taken by the next small print of
/// the same sheet.
std::vector<Place> impose(const Stock& stock, const std::vector<PrintSize>& prints,
                          const Imposition& imposition = {});

} // namespace thawslip::layout
