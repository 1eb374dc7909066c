#pragma once

#include "app/data_folder.h"
#include "app/own_files.h"
#include "base/result.h"
#include "layout/compose.h"
#include "layout/files/stock_file.h"

#include <filesystem>
#include <set>
#include <string>
#include <vector>

namespace thawslip::app {

/// The stocks that come with the program, by name.
/// \throws SystemFailure when their folder cannot be read or one of them is broken
std::vector<layout::Stock> shipped_stocks(const DataFolder& data);

/// A stock by its name, or from the file that `name_or_file` is, which is added to `own`. Only that
/// one file is read, unless there is none of that name.
/// \returns the stock, or what is wrong, as it is shown to the user
Result<layout::Stock, std::string> choose_stock(const std::string& name_or_file,
                                                const DataFolder& data, OwnFiles& own);

/// Where the layouts for a kind of print are: those for labels, for cards and for lists each have
/// a folder of their own.
std::filesystem::path layout_folder(const DataFolder& data, wording::Kind kind);

/// The layouts that come with the program, of the folders for these kinds, by name. Other folders
/// are not looked into: a print takes time enough without them.
/// \throws SystemFailure when one cannot be read
std::vector<layout::Layout> shipped_layouts(const DataFolder& data,
                                            const std::set<wording::Kind>& kinds);

/// The first layout of `kind` that is drawn for cells of this stock's shape; nullptr when there
/// is none.
const layout::Layout* layout_for(wording::Kind kind, const layout::Stock& stock,
                                 const std::vector<layout::Layout>& layouts);

/// A layout by name or from a file, as `choose_stock`.
Result<layout::Layout, std::string> choose_layout(const std::string& name_or_file,
                                                  const std::vector<layout::Layout>& shipped,
                                                  OwnFiles& own);

} // namespace thawslip::app
