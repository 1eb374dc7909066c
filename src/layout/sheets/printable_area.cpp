#include "layout/sheets/printable_area.h"

#include "layout/sheets/ruler_text.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <optional>

namespace thawslip::layout {
namespace {

/// A hundredth of a millimetre is the unit in which printers report their margins (IPP).
constexpr Length slack = Length::millimetres(0.01);

/// The part of a cell that reaches `depth` into a strip is lost; rounding is not.
Length lost_by(Length depth) {
    return depth > slack ? depth : Length{};
}

/// The upright box around a rectangle that a correction has moved, stretched and turned.
Rect corrected(const Rect& area, const Correction& correction) {
    const Point corners[] = {
        correction({area.left(), area.top()}), correction({area.right(), area.top()}),
        correction({area.left(), area.bottom()}), correction({area.right(), area.bottom()})};
    const auto [left, right] = std::ranges::minmax(corners, {}, &Point::x);
    const auto [top, bottom] = std::ranges::minmax(corners, {}, &Point::y);
    return {{left.x, top.y}, {right.x - left.x, bottom.y - top.y}};
}

/// The safe margin with which nothing is lost any more, rounded up to a tenth of a millimetre.
/// A correction that makes the page smaller makes margins smaller, too.
Length sufficient_margin(const Stock& stock, Length lost, const Correction& correction) {
    const double gain = std::min({1.0, correction.scale_x, correction.scale_y}) -
                        std::max(std::abs(correction.skew), std::abs(correction.skew_y));
    const Length margin = stock.safe_margin + lost / gain;
    return Length::millimetres(std::ceil(margin.in_millimetres() * 10 - 1e-6) / 10);
}

/// One edge of the sheet, its strip and what it costs each cell.
struct Edge {
    const char* name;
    Length Insets::*side;
};

constexpr Edge edges[] = {{"top", &Insets::top},
                          {"right", &Insets::right},
                          {"bottom", &Insets::bottom},
                          {"left", &Insets::left}};

/// "cell 9", "cells 9 and 10", "cells 1, 3, 5 and 7", "cells 1 to 40" from five neighbours on.
std::string cells_in_words(const std::vector<int>& cells) {
    const auto last = cells.back();
    if (cells.size() == 1) {
        return fmt::format("cell {}", last);
    }
    const bool in_a_row = last - cells.front() + 1 == static_cast<int>(cells.size());
    if (in_a_row && cells.size() > 4) {
        return fmt::format("cells {} to {}", cells.front(), last);
    }
    return fmt::format("cells {} and {}", fmt::join(cells.begin(), cells.end() - 1, ", "), last);
}

/// What one edge costs, or nothing.
std::optional<Diagnostic> caution(const Stock& stock, const Edge& edge, const Insets& insets,
                                  const Correction& correction) {
    std::vector<int> cells;
    Length most;
    for (const auto& one : touched_cells(stock, insets, correction)) {
        if (one.lost.*edge.side > Length{}) {
            cells.push_back(one.cell + 1);
            most = std::max(most, one.lost.*edge.side);
        }
    }
    if (cells.empty()) {
        return std::nullopt;
    }
    const auto millimetres = [](Length l) { return ruler_text(l, Unit::Millimetre); };
    const auto numbers = cells_in_words(cells);
    return Diagnostic{
        Severity::Caution,
        {},
        KeyPath{"safe_margin"},
        fmt::format("the printer does not reach the {} {} of the sheet: on \"{}\", {} {} {} of "
                    "what may be printed on",
                    edge.name, millimetres(insets.*edge.side), stock.name, numbers,
                    cells.size() == 1 ? "loses" : "lose", millimetres(most)),
        {fmt::format("a safe margin of {} keeps clear of it",
                     millimetres(sufficient_margin(stock, most, correction))),
         fmt::format("or leave {} empty, or take a stock with wider edges", numbers)}};
}

} // namespace

Rect printable_area(Size sheet, const Insets& insets) {
    return {{insets.left, insets.top},
            {sheet.width - insets.left - insets.right, sheet.height - insets.top - insets.bottom}};
}

std::vector<TouchedCell> touched_cells(const Stock& stock, const Insets& insets,
                                       const Correction& correction) {
    const Rect reached = printable_area(stock.sheet, insets);
    std::vector<TouchedCell> touched;
    for (int cell = 0; cell < stock.cells(); ++cell) {
        const Rect safe = corrected(stock.safe_at(cell), correction);
        const Insets lost{
            lost_by(reached.top() - safe.top()), lost_by(safe.right() - reached.right()),
            lost_by(safe.bottom() - reached.bottom()), lost_by(reached.left() - safe.left())};
        if (lost != Insets{}) {
            touched.push_back({cell, lost});
        }
    }
    return touched;
}

Diagnostics check_printable(const Stock& stock, const Insets& insets,
                            const Correction& correction) {
    Diagnostics cautions;
    for (const Edge& edge : edges) {
        if (auto one = caution(stock, edge, insets, correction)) {
            cautions.push_back(*std::move(one));
        }
    }
    return cautions;
}

} // namespace thawslip::layout
