#include "layout/sheets/stock.h"

#include "layout/sheets/ruler_text.h"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <fmt/format.h>
#include <numbers>

namespace thawslip::layout {
namespace {

/// Sums of lengths that were written in millimetres may differ in the last bits.
constexpr Length stock_slack = Length::millimetres(0.005);

/// How far the safe area's edges stand inside the cell's.
///
/// Where the corner is rounded, the safe area's own corner must be far enough inside too. With
/// the radius r, the margin m and the inset d, that corner lies (r - d)·√2 from the centre of the
/// arc, and may lie r - m from it: d = r - (r - m)/√2. Where m >= r, the margin itself is enough.
Length safe_inset(const Stock& stock) {
    const Length radius = stock.corner_radius;
    const Length margin = stock.safe_margin;
    return radius > margin ? radius - (radius - margin) / std::numbers::sqrt2 : margin;
}

/// The words and numbers of one direction, so that both are checked by the same lines.
struct StockAxis {
    const char* cells; ///< "columns"
    const char* cell;  ///< "column"
    const char* side;  ///< "wide"
    const char* edge;  ///< "left edge"
    int count;
    Length size;
    Length pitch;
    Length first;
    Length paper;
};

StockAxis across(const Stock& s) {
    return {"columns",    "column",      "wide",    "left edge",  s.columns,
            s.cell.width, s.pitch.width, s.first.x, s.sheet.width};
}

StockAxis down(const Stock& s) {
    return {"rows",        "row",          "high",    "top edge",    s.rows,
            s.cell.height, s.pitch.height, s.first.y, s.sheet.height};
}

bool is_sensible(Length side) {
    return side >= smallest_side && side <= largest_side; // false for not-a-number, too
}

Diagnostic fault(const char* key, std::string message, std::vector<std::string> hints = {}) {
    return {Severity::Error, {}, KeyPath{key}, std::move(message), std::move(hints)};
}

/// One size in both directions: `what` is "the paper" or "a cell".
void check_size(const char* key, const char* what, Size size, Unit unit, Diagnostics& faults) {
    const auto check_side = [&](Length side, const char* direction) {
        if (!is_sensible(side)) {
            faults.push_back(fault(key, fmt::format("{} is {} {}, expected {} to {}", what,
                                                    ruler_text(side, unit), direction,
                                                    ruler_text(smallest_side, unit),
                                                    ruler_text(largest_side, unit))));
        }
    };
    check_side(size.width, "wide");
    check_side(size.height, "high");
}

bool check_counts(const Stock& stock, Diagnostics& faults) {
    const auto before = faults.size();
    for (const StockAxis& axis : {across(stock), down(stock)}) {
        if (axis.count < 1) {
            faults.push_back(fault(
                axis.cells, fmt::format("{} {}, expected at least 1", axis.count, axis.cells)));
        }
    }
    const long long cells = static_cast<long long>(stock.columns) * stock.rows;
    if (faults.size() == before && cells > most_cells) {
        faults.push_back(
            fault("columns", fmt::format("{} columns x {} rows = {} cells, expected "
                                         "at most {} a sheet",
                                         stock.columns, stock.rows, cells, most_cells)));
    }
    return faults.size() == before;
}

/// "4 columns x 60 mm + 3 gutters x 2 mm + 10 mm = 256 mm"
std::string sum_in_words(const StockAxis& axis, Length total, Unit unit) {
    const Length gutter = axis.pitch - axis.size;
    std::string text =
        fmt::format("{} {} x {}", axis.count, axis.count == 1 ? axis.cell : axis.cells,
                    ruler_text(axis.size, unit));
    if (axis.count > 1 && gutter > stock_slack) {
        text += fmt::format(" + {} {} x {}", axis.count - 1, axis.count == 2 ? "gutter" : "gutters",
                            ruler_text(gutter, unit));
    }
    if (axis.first > stock_slack) {
        text += " + " + ruler_text(axis.first, unit);
    }
    return text + " = " + ruler_text(total, unit);
}

void check_axis(const StockAxis& axis, Unit unit, Diagnostics& faults) {
    if (!(axis.first >= -stock_slack)) {
        faults.push_back(
            fault("first", fmt::format("the first {} starts {} from the paper's {}, "
                                       "expected 0 or more",
                                       axis.cell, ruler_text(axis.first, unit), axis.edge)));
        return;
    }
    if (axis.count > 1 && !(axis.pitch >= axis.size - stock_slack)) {
        faults.push_back(fault(
            "pitch",
            fmt::format("the {0} overlap: a cell is {1} {2}, but the next one starts "
                        "after {3}, so {4} would be printed twice",
                        axis.cells, ruler_text(axis.size, unit), axis.side,
                        ruler_text(axis.pitch, unit), ruler_text(axis.size - axis.pitch, unit)),
            {"the pitch is the cell plus the gutter"}));
        return;
    }
    const Length total = axis.first + axis.pitch * (axis.count - 1) + axis.size;
    if (!(total <= axis.paper + stock_slack)) {
        faults.push_back(
            fault(axis.count > 1 ? axis.cells : "cell",
                  fmt::format("{}, but the paper is {} {}", sum_in_words(axis, total, unit),
                              ruler_text(axis.paper, unit), axis.side)));
    }
}

Length long_side(const Stock& stock) {
    return std::max(stock.cell.width, stock.cell.height);
}

void check_inside_of_cell(const Stock& stock, Unit unit, Diagnostics& faults) {
    const Length side = std::min(stock.cell.width, stock.cell.height);
    const char* direction = stock.cell.width <= stock.cell.height ? "wide" : "high";
    const auto show = [unit](Length length) { return ruler_text(length, unit); };
    if (!(stock.corner_radius >= Length{} && stock.corner_radius <= side / 2 + stock_slack)) {
        faults.push_back(
            fault("corner_radius",
                  fmt::format("the corner radius is {}, expected 0 to {}: half of the "
                              "cell, which is {} {}",
                              show(stock.corner_radius), show(side / 2), show(side), direction)));
    }
    if (!(stock.safe_margin >= Length{})) {
        faults.push_back(fault("safe_margin", fmt::format("the safe margin is {}, expected 0 or "
                                                          "more",
                                                          show(stock.safe_margin))));
    } else if (const Length least = stock.halves ? std::min(side, long_side(stock) / 2) : side;
               !(least - stock.safe_margin * 2 > stock_slack)) {
        faults.push_back(
            fault("safe_margin", fmt::format("2 safe margins x {} = {}, which leaves nothing of a "
                                             "cell that is {} {}",
                                             show(stock.safe_margin), show(stock.safe_margin * 2),
                                             show(side), direction)));
    }
    if (stock.halves && stock.roll) {
        faults.push_back(fault("halves", "the labels of a roll are not cut apart"));
    }
}

void check_kind(const Stock& stock, Diagnostics& faults) {
    if (stock.cut && stock.roll) {
        faults.push_back(fault("cut", "a roll is not cut by hand from a sheet"));
    }
    if (stock.roll && (stock.cells() != 1 || stock.sheet != stock.cell || stock.first != Point{})) {
        faults.push_back(fault("roll", "on a roll the page is the label: one cell, as large as the "
                                       "page"));
    }
}

} // namespace

Rect Stock::cell_at(int index) const {
    assert(index >= 0 && index < cells() && "no such cell");
    const int row = index / columns;
    const int column = index % columns;
    return {{first.x + pitch.width * column, first.y + pitch.height * row}, cell};
}

Rect Stock::safe_at(int index) const {
    return cell_at(index).inset(safe_inset(*this));
}

Rect Stock::part_at(int index, Part part) const {
    Rect rect = cell_at(index);
    if (part == Part::Whole) {
        return rect;
    }
    const bool is_high = rect.size.height > rect.size.width;
    Length& side = is_high ? rect.size.height : rect.size.width;
    side = side / 2;
    if (part == Part::SecondHalf) {
        (is_high ? rect.origin.y : rect.origin.x) += side;
    }
    return rect;
}

Rect Stock::safe_at(int index, Part part) const {
    return part_at(index, part).inset(safe_inset(*this));
}

Rect Stock::block() const {
    return {first,
            {pitch.width * (columns - 1) + cell.width, pitch.height * (rows - 1) + cell.height}};
}

Diagnostics check_geometry(const Stock& stock) {
    Diagnostics faults;
    const Unit unit = unit_of(stock);
    check_size("sheet", "the paper", stock.sheet, unit, faults);
    check_size("cell", "a cell", stock.cell, unit, faults);
    const bool sizes_are_sensible = faults.empty();
    const bool counts_are_sensible = check_counts(stock, faults);
    if (sizes_are_sensible) {
        check_inside_of_cell(stock, unit, faults);
    }
    if (sizes_are_sensible && counts_are_sensible) {
        check_axis(across(stock), unit, faults);
        check_axis(down(stock), unit, faults);
        check_kind(stock, faults);
    }
    return faults;
}

} // namespace thawslip::layout
