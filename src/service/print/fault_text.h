#pragma once

#include "base/diagnostic.h"
#include "layout/compose.h"
#include "wording/print.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// Whether type is as large as the layouts say, or large print.
enum class TypeSize { Usual, Large };

/// What a fault of the layout says to the cook, without its place; `key` tells where it belongs.
/// \param stocks_that_fit  names of stocks that would take the print, for the hint
Diagnostic to_diagnostic(const layout::Fault& fault, const wording::Print& print,
                         const layout::Stock& stock,
                         const std::vector<std::string>& stocks_that_fit,
                         TypeSize type = TypeSize::Usual);

} // namespace thawslip::service
