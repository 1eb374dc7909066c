#pragma once

#include "base/diagnostic.h"
#include "toml/document.h"

#include <iosfwd>
#include <span>

namespace thawslip::app {

/// Writes diagnostics as `file:line:column: error: …`, sorted by place, each with its source line
/// where one of `documents` is its file.
void print(std::ostream& out, Diagnostics diagnostics, std::span<const toml::Document> documents);

} // namespace thawslip::app
