#pragma once

#include <string>
#include <vector>

namespace thawslip::test_support {

/// A glyph where MuPDF puts it.
struct ShownGlyph {
    std::string font; ///< as the file names it: "ABCDEF+ClearSans"
    int id = 0;       ///< in the embedded font file
    double x = 0.0;   ///< of its origin, points from the page's left edge
    double y = 0.0;   ///< points from the page's top
};

/// The glyphs of a page in drawing order, by `mutool trace` (MuPDF).
std::vector<ShownGlyph> trace_glyphs(const std::string& pdf, int page);

} // namespace thawslip::test_support
