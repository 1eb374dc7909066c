#pragma once

#include "base/geometry.h"
#include "typeset/face.h"

#include <cstdint>
#include <string>
#include <vector>

namespace thawslip::typeset {

/// One glyph of a shaped run. Lengths in em.
struct Glyph {
    std::uint32_t id = 0;
    double advance = 0.0;         ///< to the next glyph's origin, kerning included
    double x_offset = 0.0;        ///< drawn this far right of its origin (marks)
    double y_offset = 0.0;        ///< drawn this far **above** the baseline
    std::uint32_t text_begin = 0; ///< the bytes of the run's text this glyph stands for;
    std::uint32_t text_end = 0;   ///< empty for all but the first glyph of a cluster
    friend bool operator==(const Glyph&, const Glyph&) = default;
};

/// Glyphs of one face, left to right, with the text they spell.
struct GlyphRun {
    FaceId face = 0;
    std::string text; ///< UTF-8, NFC
    std::vector<Glyph> glyphs;

    double width() const; ///< sum of advances, em
    friend bool operator==(const GlyphRun&, const GlyphRun&) = default;
};

} // namespace thawslip::typeset
