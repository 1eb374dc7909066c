#pragma once

#include "code/read_picture.h"
#include "code/symbol.h"

namespace thawslip::code {

/// The symbol in its quiet zone, black on white, each module a square of so many pixels.
/// \pre pixels_per_module > 0
GreyPicture picture_of(const Symbol& symbol, int pixels_per_module);

} // namespace thawslip::code
