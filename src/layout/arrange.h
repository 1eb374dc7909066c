#pragma once

#include "layout/areas/content.h"
#include "layout/layout.h"

#include <string>
#include <vector>

namespace thawslip::layout {

/// One print's words, shaped: one Content for each area of the layout, in the layout's order.
/// Code areas have empty content.
using Contents = std::vector<Content>;

/// How large everything is set, in one number, so that the hierarchy is always kept: at 0 every
/// area stands at its smallest x-height, at 1 at its comfortable one, at 2 at its largest;
/// between them it grows in proportion. No area shrinks when another grows.
struct Scale {
    double value = 1.0;
};

/// Leaves out the first `left_out` of the areas that may leave, in their declared order.
struct Choice {
    Scale scale;
    int left_out = 0;
};

/// Where one area came to stand.
struct PlacedArea {
    bool shown = false;
    TypeSize type;
    Rect room; ///< the area's rectangle, from the top left of the room given
    Rect text; ///< where its text is set inside `room`
    bool cuts_words = false;
};

/// A print's areas at one choice of sizes.
struct Arrangement {
    std::vector<PlacedArea> areas; ///< in the layout's order
    std::vector<Rect> rules;
    Length overflow;      ///< by how much it is too high or too wide; 0 when it fits
    std::string tightest; ///< the area that asks for most, for messages
    bool cuts_words = false;
    bool fits() const { return overflow <= Length::points(1e-6); }
};

TypeSize type_at(const Area& area, Scale scale, const typeset::FontSet& fonts);

/// Lays the areas out in `room`. The same room and a smaller scale never overflow more.
Arrangement arrange(const Layout& layout, const Contents& contents, Size room, Choice choice,
                    const typeset::FontSet& fonts);

/// How many areas with content may leave.
int optional_areas(const Layout& layout, const Contents& contents);

} // namespace thawslip::layout
