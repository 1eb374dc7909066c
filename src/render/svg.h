#pragma once

#include "layout/frame.h"
#include "typeset/face.h"

#include <string>
#include <string_view>

namespace thawslip::render {

/// The frame as one SVG 1.1 document, as large as the sheet, in points. Glyphs are outlines, each
/// told once, so that it looks alike wherever it is shown, with or without the faces.
std::string svg(const layout::Frame& frame, const typeset::FontSet& fonts, std::string_view title);

} // namespace thawslip::render
