#pragma once

#include "layout/compose.h"

namespace thawslip::layout {

/// Why a print cannot be made, without saying which.
using Why = decltype(Fault::why);

/// Prints that differ in their own fields alone, fitted together.
struct AlikeFit {
    /// Each card of a print with the widest of each own field: what all were measured by.
    std::vector<FittedPrint> widest;
    std::vector<FittedPrint> prints; ///< print by print, card by card
};

/// Prints of a source that are alike.
struct Alike {
    std::size_t first = 0;
    std::size_t count = 1;
    std::size_t wanted = 1; ///< of them, from the first on
};

/// Fits the wanted prints of those that are alike.
///
/// One print is measured for all: it says of each own field the widest. An own field differs from
/// another in one word only, so lines broken for the widest hold the others too, and each needs no
/// more room at any size.
Result<AlikeFit, Why> fit_alike(const Source& source, const Alike& alike, const Layouts& layouts,
                                const Medium& medium, Shaper& shaper);

} // namespace thawslip::layout
