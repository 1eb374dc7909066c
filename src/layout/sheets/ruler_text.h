#pragma once

#include "base/geometry.h"

#include <string>

namespace thawslip::layout {

struct Stock;

/// Which side of the ruler a person looks at.
enum class Unit { Millimetre, Inch };

/// The side of the ruler on which a size is round: inches for 5 x 3 in, millimetres for
/// 210 x 297 mm and for whatever is round on both sides or on neither.
Unit unit_of(Size size);

/// The unit in which a stock was made: that of its paper, or of its cells on unusual paper.
Unit unit_of(const Stock& stock);

/// Whether a length is whole sixty-fourths of an inch, or whole thirds or their halves.
bool is_fraction_of_an_inch(Length length);

/// A length as one reads it off a ruler: "67.5 mm", "4 3/16 in", "3 1/3 in"; inches that are no
/// such fraction as "0.0787 in". Millimetres to 2 decimals, inches to 4.
std::string ruler_text(Length length, Unit unit);

/// Width and height: "99 x 68 mm", "2 5/8 x 1 in".
std::string ruler_text(Size size, Unit unit);

} // namespace thawslip::layout
