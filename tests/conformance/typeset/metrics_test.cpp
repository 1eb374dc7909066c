// Heights of letters against FreeType, which reads the same files by itself.

#include "base/length.h"
#include "support/shipped_fonts.h"

#include <doctest/doctest.h>
#include <ft2build.h>
#include FT_FREETYPE_H

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// The top of the letter's outline, em.
double height_by_freetype(const std::string& path, char letter) {
    FT_Library library = nullptr;
    FT_Face face = nullptr;
    REQUIRE(FT_Init_FreeType(&library) == 0);
    REQUIRE(FT_New_Face(library, path.c_str(), 0, &face) == 0);
    REQUIRE(FT_Load_Char(face, static_cast<FT_ULong>(letter), FT_LOAD_NO_SCALE) == 0);
    const auto top = static_cast<double>(face->glyph->metrics.horiBearingY);
    const double height = top / static_cast<double>(face->units_per_EM);
    FT_Done_Face(face);
    FT_Done_FreeType(library);
    return height;
}

} // namespace

TEST_CASE("x-heights and capital heights are those of the letters as FreeType sees them") {
    for (const auto& face : shipped_fonts().faces) {
        CAPTURE(face.path());
        CHECK(face.metrics().x_height == height_by_freetype(face.path(), 'x'));
        CHECK(face.metrics().cap_height == height_by_freetype(face.path(), 'H'));
        CHECK(face.metrics().ascent > face.metrics().cap_height);
        CHECK(face.metrics().descent > 0.1);
    }
}

TEST_CASE("the least type size by law follows from the x-height") {
    // Regulation (EU) No 1169/2011, Art. 13(2): an x-height of 1.2 mm or more. The sizes were
    // worked out by hand from the outlines: 1120/2048 em in DejaVu Sans, 1049/2048 in Clear Sans.
    const auto least_points = [](const typeset::Face& face) {
        return Length::millimetres(1.2).in_points() / face.metrics().x_height;
    };
    CHECK(least_points(face_from(dejavu + ".ttf")) == doctest::Approx(6.22).epsilon(0.001));
    CHECK(least_points(face_from(clear_sans + "Regular.ttf")) ==
          doctest::Approx(6.64).epsilon(0.001));
}
