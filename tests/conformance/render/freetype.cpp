#include "freetype.h"

#include <cmath>
#include <ft2build.h>
#include <stdexcept>

#include FT_FREETYPE_H

namespace thawslip::test_support {

int GlyphInk::at(int x, int y) const {
    const int column = x - left;
    const int row = y + top;
    if (column < 0 || column >= width || row < 0 || row >= height) {
        return 0;
    }
    return static_cast<unsigned char>(darkness[static_cast<std::size_t>(row * width + column)]);
}

void FreeTypeFace::Free::operator()(FT_LibraryRec_* library) const {
    FT_Done_FreeType(library);
}

void FreeTypeFace::Free::operator()(FT_FaceRec_* face) const {
    FT_Done_Face(face);
}

FreeTypeFace::FreeTypeFace(const std::string& path) {
    FT_Library library = nullptr;
    FT_Face face = nullptr;
    if (FT_Init_FreeType(&library) != 0) {
        throw std::runtime_error{"no FreeType"};
    }
    library_.reset(library);
    if (FT_New_Face(library, path.c_str(), 0, &face) != 0) {
        throw std::runtime_error{"FreeType does not read " + path};
    }
    face_.reset(face);
}

GlyphInk FreeTypeFace::draw(unsigned glyph, int em, double shift) const {
    FT_Vector offset{std::lround(shift * 64.0), 0};
    FT_Set_Transform(face_.get(), nullptr, &offset);
    if (FT_Set_Pixel_Sizes(face_.get(), 0, static_cast<FT_UInt>(em)) != 0 ||
        FT_Load_Glyph(face_.get(), glyph, FT_LOAD_NO_HINTING | FT_LOAD_NO_BITMAP) != 0 ||
        FT_Render_Glyph(face_->glyph, FT_RENDER_MODE_NORMAL) != 0) {
        throw std::runtime_error{"FreeType does not draw glyph " + std::to_string(glyph)};
    }
    const auto& bitmap = face_->glyph->bitmap;
    GlyphInk ink{face_->glyph->bitmap_left,
                 face_->glyph->bitmap_top,
                 static_cast<int>(bitmap.width),
                 static_cast<int>(bitmap.rows),
                 {}};
    for (int row = 0; row < ink.height; ++row) {
        ink.darkness.append(reinterpret_cast<const char*>(bitmap.buffer) + row * bitmap.pitch,
                            bitmap.width);
    }
    return ink;
}

} // namespace thawslip::test_support
