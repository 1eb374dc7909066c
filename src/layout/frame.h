#pragma once

#include "base/geometry.h"
#include "typeset/glyph_run.h"

#include <cstdint>
#include <variant>
#include <vector>

namespace thawslip::layout {

/// Ink, or the bare paper inside of a black field.
enum class Tone { Black, White };

/// A glyph run at its final place and size.
struct Text {
    typeset::GlyphRun run;
    Length size;    ///< type size: 1 em
    Point baseline; ///< where the first glyph's origin stands
    Tone tone = Tone::Black;
};

/// The thinnest line that a worn printer still draws: two dots at 203 dpi.
inline constexpr Length thinnest_line = Length::points(0.75);

/// A filled black rectangle: a rule, a crop mark, a bar.
struct Rule {
    Rect area;
};

/// A rectangle drawn as a line, centred on its edge: a tick box, a place to write in.
struct Outline {
    Rect area;
    Length thickness;
    Length corner_radius;
};

/// Square modules, row by row from the top left; true is dark. The quiet zone is outside the
/// grid: it is room in the layout, never ink.
struct ModuleGrid {
    Point top_left;
    Length module;
    std::uint16_t side = 0; ///< modules per side
    std::vector<bool> dark; ///< side × side
};

using Item = std::variant<Text, Rule, Outline, ModuleGrid>;

/// How a printer's page differs from what is asked of it, turned round: applied to the whole
/// sheet before drawing, with x, y from the top left, y down.
///     x' = scale_x·x +    skew·y + offset.x
///     y' =  skew_y·x + scale_y·y + offset.y
/// Paper that is fed crooked needs both skews; a slanting scan line needs skew_y alone.
struct Correction {
    double scale_x = 1.0;
    double scale_y = 1.0;
    double skew = 0.0; ///< of x, by y
    Point offset;
    double skew_y = 0.0; ///< of y, by x
    friend bool operator==(const Correction&, const Correction&) = default;

    Point operator()(Point p) const {
        return {scale_x * p.x + skew * p.y + offset.x, skew_y * p.x + scale_y * p.y + offset.y};
    }
};

/// Everything drawn on one sheet, in drawing order, at its final place. Plain data: a renderer
/// decides nothing, it only draws.
struct Frame {
    Size sheet;
    Correction correction;
    std::vector<Item> items;
};

} // namespace thawslip::layout
