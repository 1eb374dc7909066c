#include "layout/sheets/impose.h"

#include <algorithm>
#include <cassert>
#include <fmt/format.h>
#include <optional>
#include <utility>

namespace thawslip::layout {
namespace {

/// Which cells of the first sheet can still be printed on.
std::vector<bool> free_cells(const Stock& stock, const Imposition& imposition) {
    std::vector<bool> is_free(static_cast<std::size_t>(stock.cells()));
    for (int cell = 1; cell <= stock.cells(); ++cell) {
        is_free[static_cast<std::size_t>(cell - 1)] = cell >= imposition.first_cell;
    }
    for (const int cell : imposition.skipped_cells) {
        if (cell >= 1 && cell <= stock.cells()) {
            is_free[static_cast<std::size_t>(cell - 1)] = false;
        }
    }
    return is_free;
}

/// "the sheet has cells 1 to 10"
std::string cells_there_are(const Stock& stock) {
    if (stock.cells() == 1) {
        return fmt::format("\"{}\" has one cell {}", stock.name, stock.roll ? "a page" : "a sheet");
    }
    return fmt::format("a sheet of \"{}\" has cells 1 to {}", stock.name, stock.cells());
}

} // namespace

Diagnostics check_imposition(const Stock& stock, const Imposition& imposition) {
    Diagnostics faults;
    const auto check_cell = [&](const KeyPath& key, int cell) {
        if (cell < 1 || cell > stock.cells()) {
            faults.push_back({Severity::Error,
                              {},
                              key,
                              fmt::format("there is no cell {}: {}", cell, cells_there_are(stock)),
                              {}});
        }
    };
    check_cell(KeyPath{"first_cell"}, imposition.first_cell);
    const KeyPath skipped{"skipped_cells"};
    for (std::size_t i = 0; i < imposition.skipped_cells.size(); ++i) {
        check_cell(skipped.index(i), imposition.skipped_cells[i]);
    }
    if (faults.empty() && std::ranges::count(free_cells(stock, imposition), true) == 0) {
        faults.push_back({Severity::Error,
                          {},
                          skipped,
                          "no cell of the first sheet is left to print on",
                          {"take a new sheet, without a first cell and cells to skip"}});
    }
    return faults;
}

std::vector<Place> impose(const Stock& stock, int count, const Imposition& imposition) {
    assert(count >= 0 && check_imposition(stock, imposition).empty());
    std::vector<Place> places;
    places.reserve(static_cast<std::size_t>(std::max(count, 0)));
    const auto is_free = free_cells(stock, imposition);
    for (int cell = 0; cell < stock.cells() && std::ssize(places) < count; ++cell) {
        if (is_free[static_cast<std::size_t>(cell)]) {
            places.push_back({0, cell});
        }
    }
    const int on_first = static_cast<int>(places.size());
    for (int next = 0; next < count - on_first; ++next) {
        places.push_back({1 + next / stock.cells(), next % stock.cells()});
    }
    return places;
}

std::vector<Place> impose(const Stock& stock, const std::vector<PrintSize>& prints,
                          const Imposition& imposition) {
    const auto cells = impose(stock, static_cast<int>(prints.size()), imposition);
    auto next = cells.begin();
    std::optional<Place> half; // one that is free
    std::vector<Place> places;
    places.reserve(prints.size());
    for (const auto size : prints) {
        if (half && half->sheet < places.back().sheet) {
            half.reset();
        }
        if (size == PrintSize::HalfCell && half) {
            places.push_back(*std::exchange(half, std::nullopt));
            continue;
        }
        places.push_back(*next++);
        if (size == PrintSize::HalfCell) {
            half = Place{places.back().sheet, places.back().cell, Part::SecondHalf};
            places.back().part = Part::FirstHalf;
        }
    }
    return places;
}

} // namespace thawslip::layout
