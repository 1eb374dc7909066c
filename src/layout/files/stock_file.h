#pragma once

#include "base/diagnostic.h"
#include "layout/sheets/stock.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::layout {

/// What came of one stock file.
struct StockReading {
    std::optional<Stock> stock; ///< only when nothing is wrong with it
    Diagnostics diagnostics;    ///< every fault, placed, in the order of the file
    std::string text;           ///< the file's text, to show faults with their lines
};

/// Reads a stock from TOML. Six things say all there is to say; most have a default:
///
///     paper   = "letter"             # or "a6 landscape"; sheet = ["210 mm", "297 mm"]
///     cell    = ["4 in", "2 in"]     # width, height; default: the whole sheet
///     columns = 2                    # default 1
///     rows    = 5                    # default 1
///     first   = ["5/32 in", "1/2 in"]   # first cell's corner; default: cells in the middle
///     pitch   = ["4 3/16 in", "2 in"]   # corner to corner; default: the cell
///
/// Further: `about`, `corner_radius` (0), `safe_margin` (2 mm), `cut = true` for plain paper that
/// is cut by hand, `roll = true` for a roll, whose page is its label: `cell` alone.
///
/// \param file  what diagnostics call the file
/// \param name  what the stock is called: the file's name without ".toml"
StockReading read_stock(std::string text, std::string file, std::string name);

/// Every key that a stock file may have.
std::vector<std::string> accepted_stock_keys();

/// Reads one stock file. One that is missing or is no ordinary file is a diagnostic.
StockReading load_stock(const std::string& path);

/// The stocks of a folder, and what is wrong with those of its files that are not among them.
struct StockShelf {
    std::vector<Stock> stocks; ///< by name
    Diagnostics diagnostics;
};

/// Reads every `*.toml` of a folder, not of folders below it.
/// \throws std::filesystem::filesystem_error when the folder cannot be read
StockShelf load_stocks(const std::string& folder);

} // namespace thawslip::layout
