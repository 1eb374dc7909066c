#pragma once

#include "archive/values.h"
#include "service/print/part.h"
#include "service/settings.h"
#include "toml/file_table.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::service {

/// A first cell that stands for the one behind the last print on the same stock.
inline constexpr int next_cell = -1; // 0 is what a cook may type, and is told that there is none

/// Which bags prints are made for, how they are laid out, and where on the sheets they stand.
struct Look {
    std::string stock;     ///< name or file; empty: the one that fits the paper setting
    std::string layout;    ///< name or file; empty: chosen by the cell's shape
    int first_cell = 1;    ///< counted along rows from 1; or next_cell
    std::vector<int> skip; ///< cells of the first sheet that cannot be used
    std::optional<double> dots_per_inch;  ///< nothing: as the settings say
    bool small_modules = false;           ///< allow code modules down to 0.33 mm
    std::optional<bool> large_print = {}; ///< smallest and comfortable type 1.4 times; nothing: as
                                          ///< the settings say
    bool is_trial = false;                ///< every sheet says that it is no label of food
    Part part = {};
    /// Of a print that is made again: the texts of `stock` and `layout` where these are files.
    std::vector<archive::SetupFile> kept = {};
    friend bool operator==(const Look&, const Look&) = default;
};

/// Whether a print is set in large type.
bool is_large_print(const Look& look, const Settings& settings);

/// The options that a print of the archive is made again with, as TOML: what of a look the archive
/// has no column for, and the settings that a command line may override.
std::string kept_options(const Look& look, const Settings& settings);

/// Reads them back into `look` and `settings`; what is not there stays as it is. What is wrong goes
/// to the reader of `table`.
void read_kept_options(toml::Table& table, Look& look, Settings& settings);

} // namespace thawslip::service
