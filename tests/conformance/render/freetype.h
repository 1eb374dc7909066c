#pragma once

#include "support/poppler.h"

#include <memory>
#include <string>
#include <vector>

struct FT_LibraryRec_;
struct FT_FaceRec_;

namespace thawslip::test_support {

/// A glyph's ink: how dark each dot is, and where the bitmap lies from the glyph's origin.
struct GlyphInk {
    int left = 0;         ///< dots from the origin to the bitmap's left edge
    int top = 0;          ///< dots from the origin **up** to its top edge
    int width = 0;        ///< dots
    int height = 0;       ///< dots
    std::string darkness; ///< row by row; 0 is light, 255 dark

    /// Darkness of the dot that is `x` right of and `y` below the origin's own.
    int at(int x, int y) const;
};

/// Left, bottom, right, top, in thousandths of an em.
struct InkBox {
    double left = 0.0, bottom = 0.0, right = 0.0, top = 0.0;
};

/// A font file as FreeType reads and draws it.
class FreeTypeFace {
public:
    explicit FreeTypeFace(const std::string& path);

    /// The glyph `em` dots large, unhinted, its origin `shift` dots right of the dot's edge: what
    /// FT_Render_Glyph makes of it, 256 shades.
    GlyphInk draw(unsigned glyph, int em, double shift) const;

    int glyphs() const;                                           ///< how many there are
    double advance(unsigned glyph) const;                         ///< thousandths of an em
    InkBox box_around(const std::vector<unsigned>& glyphs) const; ///< with the origin in it

private:
    struct Free {
        void operator()(FT_LibraryRec_* library) const;
        void operator()(FT_FaceRec_* face) const;
    };
    std::unique_ptr<FT_LibraryRec_, Free> library_;
    std::unique_ptr<FT_FaceRec_, Free> face_;
};

} // namespace thawslip::test_support
