#include "layout/sheets/dimensions.h"

#include "layout/sheets/paper.h"
#include "layout/sheets/ruler_text.h"

#include <fmt/format.h>

namespace thawslip::layout {
namespace {

/// Less than a printer can place is nothing.
constexpr Length nothing = Length::millimetres(0.01);

struct Axis {
    Dimension::Direction direction;
    const char* way; ///< "across"
    const char* before;
    const char* after;
    int count;
    Length first, cell, pitch, sheet;
};

void add_along(const Axis& axis, std::vector<Dimension>& found) {
    const auto add = [&](std::string what, Length from, Length to, int level) {
        if (to - from > nothing) {
            found.push_back({std::move(what), axis.direction, from, to, level});
        }
    };
    const auto directed = [&](const char* what) { return fmt::format("{}, {}", what, axis.way); };
    const Length end = axis.first + axis.pitch * (axis.count - 1) + axis.cell;
    const bool is_whole_sheet = axis.sheet - axis.cell <= nothing;
    if (!is_whole_sheet) {
        add(fmt::format("{} edge to the first cell", axis.before), Length{}, axis.first, 0);
        add(directed("cell"), axis.first, axis.first + axis.cell, 0);
        if (axis.count > 1) {
            add(directed("gutter"), axis.first + axis.cell, axis.first + axis.pitch, 0);
        }
        add(fmt::format("last cell to the {} edge", axis.after), end, axis.sheet, 0);
    }
    if (axis.count > 1) {
        add(directed("pitch"), axis.first, axis.first + axis.pitch, 1);
    }
    add(directed(is_whole_sheet ? "cell and paper" : "paper"), Length{}, axis.sheet, 2);
}

std::string paper_in_words(const Stock& stock) {
    const auto size = ruler_text(stock.sheet, unit_of(stock));
    const Paper* paper = paper_of(stock.sheet);
    return stock.roll ? fmt::format("A roll; each page is one label of {}.", size)
           : paper == nullptr
               ? fmt::format("Paper {}.", size)
               : fmt::format("Paper {}, which printers call {}.", size, paper->ipp_name);
}

std::string inside_in_words(const Stock& stock) {
    auto text =
        fmt::format("Kept free of ink: {} inside each edge", ruler_text(stock.safe_margin, stock));
    if (stock.corner_radius > nothing) {
        text += fmt::format("; corners are rounded by {}", ruler_text(stock.corner_radius, stock));
    }
    return text + ".";
}

} // namespace

std::vector<Dimension> dimensions(const Stock& stock) {
    using Direction = Dimension::Direction;
    std::vector<Dimension> found;
    add_along({Direction::Across, "across", "left", "right", stock.columns, stock.first.x,
               stock.cell.width, stock.pitch.width, stock.sheet.width},
              found);
    add_along({Direction::Down, "down", "upper", "lower", stock.rows, stock.first.y,
               stock.cell.height, stock.pitch.height, stock.sheet.height},
              found);
    return found;
}

std::string ruler_text(Length length, const Stock& stock) {
    const auto millimetres = ruler_text(length, Unit::Millimetre);
    return unit_of(stock) == Unit::Inch && is_fraction_of_an_inch(length)
               ? fmt::format("{} ({})", ruler_text(length, Unit::Inch), millimetres)
               : millimetres;
}

std::vector<std::string> in_words(const Stock& stock) {
    std::vector<std::string> lines{paper_in_words(stock)};
    if (stock.cells() > 1) {
        lines.push_back(fmt::format("{} cells in {} {} and {} {}, counted along rows from the top "
                                    "left.",
                                    stock.cells(), stock.columns,
                                    stock.columns == 1 ? "column" : "columns", stock.rows,
                                    stock.rows == 1 ? "row" : "rows"));
    }
    lines.push_back(inside_in_words(stock));
    if (stock.cut) {
        lines.emplace_back("Plain paper, cut by hand along the crop marks.");
    }
    return lines;
}

} // namespace thawslip::layout
