#pragma once

#include "base/result.h"
#include "layout/frame.h"

#include <span>
#include <string>

namespace thawslip::layout {

/// One cross of the ruler page: where it was asked for, and where a ruler finds it on the paper.
struct CrossReading {
    Point wanted;
    Point printed;
};

/// Why readings give no correction. `found` and `limit` are in the unit of the kind: crosses,
/// nothing, a factor, millimetres, degrees, millimetres.
struct CalibrationFault {
    enum class Kind { TooFewCrosses, CrossesInLine, Scale, Offset, Skew, Misread };
    Kind kind = Kind::TooFewCrosses;
    double found = 0.0;
    double limit = 0.0;
    friend bool operator==(const CalibrationFault&, const CalibrationFault&) = default;
};

/// What must be done to every page so that this printer puts each thing where it was wanted.
///
/// The printer is taken to move every point by one affine map, found from the readings by least
/// squares (normal equations about the mean of the crosses, each direction for itself); the
/// correction is its inverse. With four crosses there are eight readings for six unknowns, so
/// that a slip of the ruler shows.
/// \returns the correction; or a fault for fewer than three crosses, crosses in one line, a
/// scale outside 0.95 to 1.05, an offset over 10 mm, a skew over 1°, or readings of which one
/// is over 0.5 mm from where the others put it
Result<Correction, CalibrationFault> correction_from(std::span<const CrossReading> readings);

/// The fault in words, for a person with a ruler in hand.
std::string in_words(const CalibrationFault& fault);

} // namespace thawslip::layout
