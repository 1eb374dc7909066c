#pragma once

#include "code/symbol.h"

namespace thawslip::code {

/// The same symbol under the mask with the fewest penalty points, the lowest of equals.
///
/// Weighs all eight masks by ISO/IEC 18004:2015, 7.8.3 "Evaluation of data masking results": runs
/// of 5 and more, 2 × 2 blocks, finder-like patterns (at any scale, with the quiet zone counted as
/// light) and the share of dark modules. Whole rows and columns are weighed at once, a bit a
/// module, so that the eight cost less than drawing the symbol did.
/// \pre `symbol` is drawn with `symbol.mask`
Symbol with_best_mask(const Symbol& symbol);

} // namespace thawslip::code
