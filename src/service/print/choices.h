#pragma once

#include "layout/compose.h"
#include "service/messages.h"
#include "service/print/own_files.h"
#include "service/print/surroundings.h"

#include <set>
#include <string>
#include <vector>

namespace thawslip::service {

/// The stocks that come with the program, by name.
/// \throws SystemFailure when one of them is broken
std::vector<layout::Stock> shipped_stocks(const Surroundings& around);

/// A stock by its name, or from the file that `name_or_file` is, which is added to `own`. Only that
/// one is read, unless there is none of that name.
Outcome<layout::StockReading> choose_stock(const std::string& name_or_file,
                                           const Surroundings& around, OwnFiles& own);

/// The layouts of these texts.
/// \throws SystemFailure when one of them is broken
std::vector<layout::Layout> shipped_layouts(const std::vector<ShippedText>& texts);

/// The first layout of `kind` that is drawn for cells of this stock's shape; nullptr when there
/// is none.
const layout::Layout* layout_for(wording::Kind kind, const layout::Stock& stock,
                                 const std::vector<layout::Layout>& layouts);

/// A layout by name or from a file, as `choose_stock`.
Outcome<layout::Layout> choose_layout(const std::string& name_or_file,
                                      const std::vector<layout::Layout>& shipped,
                                      const Surroundings& around, OwnFiles& own);

} // namespace thawslip::service
