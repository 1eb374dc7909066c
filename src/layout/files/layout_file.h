#pragma once

#include "base/diagnostic.h"
#include "layout/layout.h"
#include "toml/document.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::layout {

/// Reads a layout file; layouts/README.md describes the format. All that is wrong is appended to
/// `faults`, placed; then there is no layout.
/// \param name  what the layout is called: the file's name without its ending
std::optional<Layout> read_layout(const toml::Document& document, std::string name,
                                  Diagnostics& faults);

/// Every key that a layout file may have, an area called "name": "picture", "area.name.words"…
std::vector<std::string> accepted_layout_keys();

} // namespace thawslip::layout
