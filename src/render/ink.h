#pragma once

#include "typeset/face.h"

#include <cstdint>
#include <span>

namespace thawslip::render {

/// Left, bottom, right and top, in em from the origin, y up.
struct InkBox {
    double left = 0.0, bottom = 0.0, right = 0.0, top = 0.0;
};

/// The box around all of `glyphs`, laid with their origins on each other, and that origin. It may
/// be a little large where a curve's control point reaches beyond the curve.
InkBox box_around(const typeset::Face& face, std::span<const std::uint32_t> glyphs);

/// How thick the face's upright strokes are, in em: of the "l", at half its height. A usual
/// thickness for a face that has none.
double stem_thickness(const typeset::Face& face);

} // namespace thawslip::render
