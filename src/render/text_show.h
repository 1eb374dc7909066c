#pragma once

#include "layout/frame.h"
#include "render/pdf_fonts.h"

#include <string>

namespace thawslip::render {

/// Appends the operators that show `text` in its font and size, which must be set already
/// (ISO 32000-1, 9.4.3 "Text-Showing Operators").
///
/// A reader moves on by the rounded widths of the font's table; wherever that would put a glyph
/// off its place by more than 0.008 pt, kerning or not, a correction stands between the glyphs.
///
/// `start` is where the pen stands, `size` the type size that was set: both in points, as rounded
/// in the page. They make up for the rounding.
struct Pen {
    double start = 0.0;
    double size = 0.0;
};
void show_text(std::string& page, const layout::Text& text, Pen pen, PdfFonts& fonts);

} // namespace thawslip::render
