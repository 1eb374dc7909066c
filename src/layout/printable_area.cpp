#include "layout/printable_area.h"

#include "layout/measure.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thawslip::layout {
namespace {

/// A hundredth of a millimetre is the unit in which printers report their margins (IPP).
constexpr Length slack = Length::millimetres(0.01);

Length overlap(Length of_strip) {
    return of_strip > slack ? of_strip : Length{};
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

Diagnostic caution(const Stock& stock, const Edge& edge, const Insets& insets,
                   const std::vector<TouchedCell>& touched) {
    std::vector<int> cells;
    Length most;
    for (const auto& one : touched) {
        if (one.lost.*edge.side > Length{}) {
            cells.push_back(one.cell + 1);
            most = std::max(most, one.lost.*edge.side);
        }
    }
    const auto millimetres = [](Length l) { return measured(l, Unit::Millimetre); };
    const char* is_or_are = cells.size() == 1 ? "loses" : "lose";
    // Rounded up, so that the margin named is enough.
    const Length enough = Length::millimetres(
        std::ceil((stock.safe_margin + most).in_millimetres() * 10 - 1e-6) / 10);
    return {Severity::Caution,
            {},
            KeyPath{"safe_margin"},
            fmt::format("the printer does not reach the {} {} of the sheet: on \"{}\", {} {} {} of "
                        "what may be printed on",
                        edge.name, millimetres(insets.*edge.side), stock.name,
                        cells_in_words(cells), is_or_are, millimetres(most)),
            {fmt::format("a safe margin of {} keeps clear of it", millimetres(enough)),
             fmt::format("or leave {} empty, or take a stock with wider edges",
                         cells_in_words(cells))}};
}

} // namespace

Rect printable_area(Size sheet, const Insets& insets) {
    return {{insets.left, insets.top},
            {sheet.width - insets.left - insets.right, sheet.height - insets.top - insets.bottom}};
}

std::vector<TouchedCell> touched_cells(const Stock& stock, const Insets& insets) {
    const Rect reached = printable_area(stock.sheet, insets);
    std::vector<TouchedCell> touched;
    for (int cell = 0; cell < stock.cells(); ++cell) {
        const Rect safe = stock.safe_at(cell);
        const Insets lost{
            overlap(reached.top() - safe.top()), overlap(safe.right() - reached.right()),
            overlap(safe.bottom() - reached.bottom()), overlap(reached.left() - safe.left())};
        if (lost != Insets{}) {
            touched.push_back({cell, lost});
        }
    }
    return touched;
}

Diagnostics check_printable(const Stock& stock, const Insets& insets) {
    const auto touched = touched_cells(stock, insets);
    Diagnostics cautions;
    for (const Edge& edge : edges) {
        if (std::ranges::any_of(
                touched, [&](const TouchedCell& one) { return one.lost.*edge.side > Length{}; })) {
            cautions.push_back(caution(stock, edge, insets, touched));
        }
    }
    return cautions;
}

} // namespace thawslip::layout
