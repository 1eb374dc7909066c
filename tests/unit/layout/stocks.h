#pragma once

#include "layout/sheets/stock.h"

namespace thawslip::layout {

using namespace literals;

/// Ten labels on US Letter; the numbers are our own.
inline Stock ten_labels() {
    Stock stock;
    stock.name = "letter-2x5-4x2in";
    stock.sheet = {8.5_in, 11_in};
    stock.cell = {4_in, 2_in};
    stock.columns = 2;
    stock.rows = 5;
    stock.first = {0.15625_in, 0.5_in};
    stock.pitch = {4.1875_in, 2_in};
    stock.corner_radius = 2_mm;
    stock.safe_margin = 2_mm;
    return stock;
}

/// `columns` x `rows` cells without gutters, centred on A4, to be cut by hand.
inline Stock cut_from_a4(int columns, int rows, Size cell) {
    Stock stock;
    stock.name = "a4-cut";
    stock.sheet = {210_mm, 297_mm};
    stock.cell = cell;
    stock.columns = columns;
    stock.rows = rows;
    stock.pitch = cell;
    stock.first = {(stock.sheet.width - cell.width * columns) / 2,
                   (stock.sheet.height - cell.height * rows) / 2};
    stock.safe_margin = 2_mm;
    stock.cut = true;
    return stock;
}

} // namespace thawslip::layout
