#pragma once

#include "layout/frame.h"
#include "render/pdf_fonts.h"

#include <string>

namespace thawslip::render {

/// What is drawn on a page, as PDF's operators (ISO 32000-1, Annex A). Here, and nowhere else, y
/// turns from down to up. Glyphs that appear for the first time are added to `fonts`.
std::string page_content(const layout::Frame& frame, PdfFonts& fonts);

} // namespace thawslip::render
