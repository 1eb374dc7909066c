#include "render/ink.h"

#include <algorithm>
#include <vector>

namespace thawslip::render {
namespace {

using typeset::OutlinePiece;
using Kind = OutlinePiece::Kind;

int points_in(Kind kind) {
    switch (kind) {
    case Kind::MoveTo:
    case Kind::LineTo: return 1;
    case Kind::QuadraticTo: return 2;
    case Kind::Close: break;
    }
    return 0;
}

void include(InkBox& box, double x, double y) {
    box.left = std::min(box.left, x);
    box.right = std::max(box.right, x);
    box.bottom = std::min(box.bottom, y);
    box.top = std::max(box.top, y);
}

/// Where the outline crosses a height, left to right. Curves count as their chords: a stem's sides
/// are straight where it is looked at.
std::vector<double> crossings(const std::vector<OutlinePiece>& outline, double height) {
    std::vector<double> found;
    double x = 0.0, y = 0.0; // the pen
    for (const auto& piece : outline) {
        if (piece.kind == Kind::Close) {
            continue; // the piece before it has led back to the start
        }
        const int end = points_in(piece.kind) - 1;
        const double to_x = piece.x[end];
        const double to_y = piece.y[end];
        if (piece.kind != Kind::MoveTo && (y < height) != (to_y < height)) {
            found.push_back(x + (to_x - x) * (height - y) / (to_y - y));
        }
        x = to_x;
        y = to_y;
    }
    std::ranges::sort(found);
    return found;
}

} // namespace

InkBox box_around(const typeset::Face& face, std::span<const std::uint32_t> glyphs) {
    InkBox box;
    for (const auto glyph : glyphs) {
        for (const auto& piece : face.outline(glyph)) {
            for (int i = 0; i < points_in(piece.kind); ++i) {
                include(box, piece.x[i], piece.y[i]);
            }
        }
    }
    return box;
}

double stem_thickness(const typeset::Face& face) {
    constexpr double usual = 0.08; // common practice, no source
    const auto glyph = face.glyph_of(U'l');
    if (glyph == 0) {
        return usual;
    }
    const auto sides = crossings(face.outline(glyph), face.metrics().cap_height / 2);
    return sides.size() >= 2 ? sides[1] - sides[0] : usual;
}

} // namespace thawslip::render
