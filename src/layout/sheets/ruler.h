#pragma once

#include "base/result.h"
#include "layout/frame.h"
#include "typeset/face.h"

#include <array>
#include <string>
#include <vector>

namespace thawslip::layout {

/// The smallest paper on which the four crosses stand apart.
inline constexpr Size smallest_ruler_page{Length::millimetres(90), Length::millimetres(90)};

/// Where the crosses of a ruler page are asked for: A upper left, B upper right, C lower left,
/// D lower right; whole centimetres or halves from the paper's upper left corner.
std::array<Point, 4> ruler_crosses(Size page);

/// How to read the page and what to write into the settings, a line each. Whoever makes the page
/// shows them as well, since small paper has no room for them.
std::vector<std::string> ruler_instructions(Size page);

/// A page by which to measure a printer. Along its edges stand rulers that count from the
/// paper's own edges: millimetres above and on the left, sixteenths of an inch below and on the
/// right; in the middle of each edge a stair, whose first visible step says how much the printer
/// leaves free; in the corners the crosses. In the middle: the instructions, with boxes to write
/// the readings in; where the paper is too small for them, a line that says how to get them.
/// It carries no correction: it shows the printer as it is.
/// \returns the page; or in words why there is none: paper that is too small
Result<Frame, std::string> ruler_page(Size page, const typeset::FontSet& fonts);

} // namespace thawslip::layout
