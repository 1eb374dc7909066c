#pragma once

#include "code/finders.h"

#include <array>
#include <optional>
#include <vector>

namespace thawslip::code {

/// How the modules around a place lie in a picture.
struct Local {
    Place middle; ///< of a module, in pixels
    Place across; ///< from it to the next of its row
    Place down;   ///< to the next of its column
};

/// The place so many modules away.
Place moved(const Local& from, double across, double down);

/// How light the picture is there, 0 to 255.
double grey_at(const GreyPicture& picture, Place place);

/// A place of the symbol whose place in the picture is known.
struct Known {
    Place module;
    Place seen;
    double weight = 1.0;
};

/// The affine map that fits what is known about a place of the symbol, nearer places counting more:
/// by a Gaussian whose standard deviation is `reach` modules. \returns nothing where what is known
/// lies on a line
std::optional<Local> local_fit(const std::vector<Known>& known, Place around, double reach);

} // namespace thawslip::code
