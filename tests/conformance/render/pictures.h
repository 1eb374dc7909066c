#pragma once

#include "layout/frame.h"
#include "support/poppler.h"
#include "typeset/face.h"

namespace thawslip::test_support {

/// The frame as a PDF, drawn by Poppler.
Raster pdf_picture(const layout::Frame& frame, const typeset::FontSet& fonts, int dots_per_inch);

/// The frame as an SVG, drawn by librsvg.
Raster svg_picture(const layout::Frame& frame, const typeset::FontSet& fonts, int dots_per_inch);

/// The middle of the ink in `area`, in points from the page's top left corner.
/// \throws std::runtime_error when there is none
Point middle_of_ink(const Raster& page, const Rect& area, int dots_per_inch);

} // namespace thawslip::test_support
