#pragma once

#include "layout/frame.h"

#include <string>
#include <string_view>

namespace thawslip::render {

/// The frame as an SVG 1.1 picture: as large as the sheet, in millimetres; inside, lengths are
/// points from the top left, as in the frame.
///
/// Glyphs are outlines, each drawn once and used wherever it stands, so that the picture needs no
/// font. `title` and the words, in drawing order, are there for those who cannot see it.
/// \throws std::domain_error for a length that no sheet has
std::string svg(const layout::Frame& frame, const typeset::FontSet& fonts, std::string_view title);

} // namespace thawslip::render
