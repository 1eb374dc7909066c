#pragma once

#include "base/length.h"

#include <vector>

namespace thawslip::layout {

/// Something that wants to stand at a height and needs room there.
struct Wanted {
    Length top;
    Length height;
};

/// Tops at which all of them stand, in their order, none over another, `gap` apart at least,
/// between `from` and `to`: those with the least sum of squares of the ways they are moved.
/// (Isotonic regression by pooling adjacent violators: Best and Chakravarti, Mathematical
/// Programming 47, 1990, from memory; cut to bounds its solution stays the best.) Where there is
/// too little room they begin at `from` and go beyond `to`.
std::vector<Length> spread(const std::vector<Wanted>& all, Length gap, Length from, Length to);

} // namespace thawslip::layout
