#include "typeset/glyph_run.h"

#include <numeric>

namespace thawslip::typeset {

double GlyphRun::width() const {
    return std::accumulate(glyphs.begin(), glyphs.end(), 0.0,
                           [](double sum, const Glyph& glyph) { return sum + glyph.advance; });
}

} // namespace thawslip::typeset
