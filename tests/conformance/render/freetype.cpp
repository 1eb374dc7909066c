#include "freetype.h"

#include <algorithm>
#include <cmath>
#include <ft2build.h>
#include <stdexcept>

#include FT_FREETYPE_H
#include FT_BBOX_H
#include FT_OUTLINE_H

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

int FreeTypeFace::glyphs() const {
    return static_cast<int>(face_->num_glyphs);
}

double FreeTypeFace::advance(unsigned glyph) const {
    if (FT_Load_Glyph(face_.get(), glyph, FT_LOAD_NO_SCALE) != 0) {
        throw std::runtime_error{"FreeType has no glyph " + std::to_string(glyph)};
    }
    return static_cast<double>(face_->glyph->metrics.horiAdvance) * 1000.0 / face_->units_per_EM;
}

InkBox FreeTypeFace::box_around(const std::vector<unsigned>& glyphs) const {
    InkBox box;
    const double unit = 1000.0 / face_->units_per_EM;
    for (const unsigned glyph : glyphs) {
        advance(glyph); // loads it
        FT_BBox ink;
        FT_Outline_Get_BBox(&face_->glyph->outline, &ink);
        box.left = std::min(box.left, static_cast<double>(ink.xMin) * unit);
        box.bottom = std::min(box.bottom, static_cast<double>(ink.yMin) * unit);
        box.right = std::max(box.right, static_cast<double>(ink.xMax) * unit);
        box.top = std::max(box.top, static_cast<double>(ink.yMax) * unit);
    }
    return box;
}

} // namespace thawslip::test_support
