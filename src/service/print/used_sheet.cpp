#include "service/print/used_sheet.h"

#include "base/list.h"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>

namespace thawslip::service {
namespace {

/// From where the last print stopped.
layout::Imposition behind(const archive::UsedSheet& used, const Look& look, Messages& messages) {
    const auto day = used.at.substr(0, 10);
    if (used.next_cell == 1) {
        messages.note(fmt::format("the last print on {}, on {}, used its sheet up: starting on a "
                                  "new one",
                                  used.stock, day));
        return {1, look.skip};
    }
    messages.note(fmt::format("starting at cell {} of {}: the last print on it, on {}, stopped "
                              "before that",
                              used.next_cell, used.stock, day));
    layout::Imposition imposition{used.next_cell, look.skip};
    add_all_once(imposition.skipped_cells, used.skipped);
    return imposition;
}

} // namespace

layout::Imposition imposition_of(const Look& look, const layout::Stock& stock,
                                 const Surroundings& around, Messages& messages) {
    if (look.first_cell != next_cell || stock.cells() == 1) {
        return {look.first_cell == next_cell ? 1 : look.first_cell, look.skip};
    }
    const auto used = around.used_sheet ? around.used_sheet(stock.name) : std::nullopt;
    if (used && used->next_cell <= stock.cells()) {
        return behind(*used, look, messages);
    }
    messages.caution(fmt::format("no print on {} is remembered, so it is not known which cells are "
                                 "used: starting at cell 1",
                                 stock.name),
                     {"on a half-used sheet, name the first free cell: --first-cell 2"});
    return {1, look.skip};
}

std::optional<archive::UsedSheet> stopped_at(const LaidOut& laid_out, const std::string& at) {
    const auto& stock = laid_out.setup.medium.stock;
    const auto& places = laid_out.fitting.places;
    if (stock.cells() == 1 || places.empty()) {
        return std::nullopt;
    }
    const auto& last = places.back();
    archive::UsedSheet used{stock.name, last.cell + 2, {}, at};
    auto skipped =
        last.sheet == 0 ? laid_out.setup.medium.imposition.skipped_cells : std::vector<int>{};
    while (std::ranges::find(skipped, used.next_cell) != skipped.end()) {
        ++used.next_cell;
    }
    std::ranges::copy_if(skipped, std::back_inserter(used.skipped),
                         [&](int cell) { return cell > used.next_cell; });
    std::ranges::sort(used.skipped);
    if (used.next_cell > stock.cells()) {
        return archive::UsedSheet{stock.name, 1, {}, at};
    }
    return used;
}

} // namespace thawslip::service
