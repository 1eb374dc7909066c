#pragma once

#include "layout/layout.h"

#include <array>
#include <string>
#include <vector>

namespace thawslip::layout {

/// One print's words, shaped: one Content for each area of the layout, in the layout's order.
using Contents = std::vector<Content>;

/// At which sizes a print is set: each of the layout's groups at a scale of its own, less the first
/// `dropped` of the areas that may drop, in their declared order.
struct Sizing {
    std::array<Scale, most_groups> scales;
    int dropped = 0;
};

/// All groups at one scale.
Sizing sizing_at(Scale scale, int dropped);

/// The scale at which an area stands.
Scale scale_of(const Area& area, const Sizing& sizing);

/// Shapes what a print says in each area; or names a character that cannot be set.
Result<Contents, ContentFault> prepare(const Layout& layout, const wording::Print& print,
                                       Shaper& shaper);

/// Where one area came to stand.
struct PlacedArea {
    bool shown = false;
    TypeSize type;
    Rect room;  ///< the area's rectangle, from the top left of the room given
    Rect place; ///< where it is drawn inside `room`
    bool cuts_words = false;
};

/// A print's areas at one sizing.
struct Arrangement {
    std::vector<PlacedArea> areas; ///< in the layout's order
    std::vector<Rect> rules;
    Length overflow;      ///< by how much it is too high or too wide; 0 when it fits
    std::string tightest; ///< the area that asks for most, for messages
    bool cuts_words = false;
    bool fits() const { return overflow <= Length::points(1e-6); }
};

/// Lays the areas out in `room`. The same room and a smaller scale never overflow more.
Arrangement arrange(const Layout& layout, const Contents& contents, Size room, const Sizing& sizing,
                    const typeset::FontSet& fonts);

/// The areas of a print that may drop, in the order in which they do.
std::vector<std::size_t> droppable(const Layout& layout, const Contents& contents);

} // namespace thawslip::layout
