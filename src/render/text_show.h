#pragma once

#include "layout/frame.h"
#include "render/pdf_fonts.h"

#include <string>

namespace thawslip::render {

/// Appends the TJ that shows a run from the current point (ISO 32000-1, 9.4.3). Between glyphs
/// it puts the differences between the widths that the file tells and the places that the run
/// wants, so that every glyph stands within 0.01 pt of its place.
void show(std::string& out, const layout::Text& text, PdfFonts& fonts);

} // namespace thawslip::render
