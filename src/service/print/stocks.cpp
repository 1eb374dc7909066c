#include "service/print/stocks.h"

#include "base/list.h"
#include "base/nearest.h"
#include "layout/sheets/paper.h"
#include "layout/sheets/ruler.h"
#include "layout/sheets/stock_drawing.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

std::string nearest_paper(const std::string& name) {
    return near_names(
        name, mapped(layout::papers(), [](const auto& known) { return std::string{known.name}; }));
}

} // namespace

Outcome<layout::Frame> drawing_of(const layout::Stock& stock, const typeset::FontSet& fonts) {
    Outcome<layout::Frame> outcome;
    const Size page{std::max(stock.sheet.width, layout::smallest_drawing_page.width),
                    std::max(stock.sheet.height, layout::smallest_drawing_page.height)};
    auto drawing = stock_drawing(stock, page, fonts);
    if (drawing) {
        outcome.value = std::move(drawing).value();
    } else {
        outcome.messages.error(drawing.fault());
    }
    return outcome;
}

Outcome<Ruler> ruler(const std::string& paper, const Surroundings& around) {
    Outcome<Ruler> outcome;
    const auto size = layout::paper_size(paper);
    if (!size) {
        outcome.messages.error(fmt::format("\"{}\" is not a paper", paper), {nearest_paper(paper)});
        return outcome;
    }
    auto page = layout::ruler_page(*size, around.fonts());
    if (page) {
        outcome.value = Ruler{*size, std::move(page).value()};
    } else {
        outcome.messages.error(page.fault());
    }
    return outcome;
}

} // namespace thawslip::service
