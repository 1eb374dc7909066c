#pragma once

#include "code/read_picture.h"

#include <vector>

namespace thawslip::code {

/// A place in a picture, in pixels from its top left corner.
struct Place {
    double x = 0.0;
    double y = 0.0;
};

/// What looks like a finder pattern.
struct FinderPattern {
    Place middle;
    double module = 0.0; ///< its size, the mean of both ways
    int seen = 0;        ///< in how many rows
};

/// Where a code is in a picture: the middles of its three finder patterns.
struct Finders {
    Place corner; ///< of the one that has the two others beside it
    Place right;  ///< the other two, in either order
    Place below;
};

/// What looks like a finder pattern by more than one row and its columns, what is seen in most rows
/// first. \param picture evenly lit, ink darker than half
std::vector<FinderPattern> find_finder_patterns(const GreyPicture& picture);

/// Where codes may be, the likeliest first: three finder patterns each (ISO/IEC 18004: dark, light,
/// dark, light and dark as 1 : 1 : 3 : 1 : 1, from whichever side), also where the code is bent or
/// seen askew. A few at most. \param picture evenly lit, ink darker than half
std::vector<Finders> find_finders(const GreyPicture& picture);

/// How many finder patterns there seem to be, by every `step`-th row; some hundreds at most, and
/// then there are more. \param picture as find_finders takes it \pre step > 0
std::size_t count_finder_patterns(const GreyPicture& picture, int step);

} // namespace thawslip::code
