// A stock file, from its text to a label on it and to its own drawing.

#include "layout/files/stock_file.h"

#include "fuzz/sheets.h"
#include "fuzz/told.h"
#include "layout/sheets/impose.h"
#include "layout/sheets/stock_drawing.h"

using namespace thawslip;

namespace {

void hold_cells(const layout::Stock& stock) {
    constexpr double slack = 0.01; // points: what a ruler does not see
    for (int cell = 0; cell < stock.cells(); ++cell) {
        const auto rect = stock.cell_at(cell);
        fuzz::hold(rect.left().in_points() >= -slack && rect.top().in_points() >= -slack &&
                       rect.right().in_points() <= stock.sheet.width.in_points() + slack &&
                       rect.bottom().in_points() <= stock.sheet.height.in_points() + slack,
                   "every cell lies on the sheet");
    }
    const auto places = impose(stock, 2 * stock.cells() + 1);
    fuzz::hold(places.back().sheet == 2, "what two sheets do not hold goes to a third");
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    const auto reading =
        layout::read_stock(std::string{fuzz::text_of(data, size)}, "stock.toml", "stock");
    fuzz::hold_told(reading.diagnostics, reading.text);
    fuzz::hold(reading.stock.has_value() != has_errors(reading.diagnostics),
               "a stock, or mistakes, never both");
    if (!reading.stock) {
        return 0;
    }
    const auto& stock = *reading.stock;
    hold_cells(stock);
    const auto drawing = stock_drawing(stock, layout::smallest_drawing_page, fuzz::fonts());
    fuzz::hold(drawing.ok() || !drawing.fault().empty(), "a refusal says why");
    layout::Layouts layouts;
    for (const auto kind : {wording::Kind::BagLabel, wording::Kind::CookDayCard}) {
        if (const auto* layout = fuzz::layout_for(kind, stock)) {
            layouts.emplace(kind, *layout);
        }
    }
    // A dish's prints: with all dishes the seeds alone would take the time that there is.
    static const std::vector<fuzz::Said> prints{fuzz::sample_prints().begin(),
                                                fuzz::sample_prints().begin() + 2};
    fuzz::hold_drawn(prints, layouts, stock);
    return 0;
}
