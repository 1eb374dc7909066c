#pragma once

#include "wording/print.h"

namespace thawslip::wording {

/// One print in two languages: each paragraph of `first` is followed by what `second` says in its
/// place, in the second voice. What both say alike, the cook's own words among them, stands once,
/// as do the kitchen and the bags. Where only the labels differ the second says its words all the
/// same, for a phrase stays with its date; a layout that hangs labels in a column leaves them out.
/// \pre both were made of the same values by the same function
Print bilingual(Print first, const Print& second);

} // namespace thawslip::wording
