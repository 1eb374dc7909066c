#include "render/ink.h"
#include "support/face_files.h"
#include "support/shipped_fonts.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <vector>

namespace ink_test {

using namespace thawslip;
using test_support::face_from;

namespace {

const std::string regular = test_support::clear_sans + "Regular.ttf";

std::vector<std::uint32_t> glyphs_of(const typeset::Face& face, std::u32string_view text) {
    std::vector<std::uint32_t> glyphs;
    for (const char32_t c : text) {
        glyphs.push_back(face.glyph_of(c));
    }
    return glyphs;
}

} // namespace

TEST_CASE("the box is around all ink, below the baseline and left of the origin too") {
    const auto face = face_from(regular);
    const auto box_of = [&face](std::u32string_view text) {
        return render::box_around(face, glyphs_of(face, text));
    };
    const auto j = box_of(U"j");
    CHECK(j.left < 0.0);
    CHECK(j.bottom < -0.15);
    const auto wide = box_of(U"W");
    const auto both = box_of(U"jW");
    CHECK(both.left == j.left);
    CHECK(both.bottom == j.bottom);
    CHECK(both.right == wide.right);
    CHECK(both.top == std::max(j.top, wide.top));
    // A plain bar: the box of its corners, and the origin.
    const auto bar = box_of(U"l");
    CHECK(bar.left == 0.0);
    CHECK(bar.bottom == 0.0);
    CHECK(bar.top > face.metrics().cap_height);
    CHECK(bar.right < 0.3);
    const auto nothing = box_of(U" ");
    CHECK(nothing.right == 0.0);
    CHECK(nothing.top == 0.0);
}

TEST_CASE("a face without an l is thought to have the stems that most have") {
    const auto lesser = face_from(test_support::face_file_without(regular, U"l", "no_l.ttf"));
    CHECK(lesser.glyph_of(U'l') == 0);
    CHECK(render::stem_thickness(lesser) == doctest::Approx(0.08)); // common practice, no source
}

TEST_CASE("a stem is as thick as the l is wide") {
    const auto face = face_from(regular);
    double left = 1.0;
    double right = 0.0;
    for (const auto& piece : face.outline(face.glyph_of(U'l'))) {
        using Kind = typeset::OutlinePiece::Kind;
        if (piece.kind == Kind::MoveTo || piece.kind == Kind::LineTo) {
            left = std::min(left, piece.x[0]);
            right = std::max(right, piece.x[0]);
        }
    }
    CHECK(render::stem_thickness(face) == doctest::Approx(right - left));
    CHECK(render::stem_thickness(face_from(test_support::clear_sans + "Bold.ttf")) >
          render::stem_thickness(face) + 0.03);
}

} // namespace ink_test
