#pragma once

#include "base/diagnostic.h"
#include "layout/areas/area.h"
#include "layout/tracks.h"
#include "wording/print.h"

#include <string>
#include <vector>

namespace thawslip::layout {

/// A line drawn in the gap under an area, as long as the area is wide.
struct RuleUnder {
    std::string area;
    Length thickness;
};

/// How many groups of areas a layout may have.
inline constexpr std::size_t most_groups = 4;

/// How one kind of print is laid out: a picture of areas, and what stands in each.
struct Layout {
    std::string name;
    SourceSpan picture; ///< where in its file it is drawn
    wording::Kind kind = wording::Kind::BagLabel;
    double narrowest = 0.0; ///< ratio width : height of the cells it is drawn for, at least…
    double widest = 100.0;  ///< …and at most
    Length lowest;          ///< height of the cells it is drawn for, at least…
    Length highest = Length::millimetres(10'000); ///< …and below
    std::vector<Track> columns;
    std::vector<Track> rows;
    std::vector<std::string> groups; ///< of areas sized together, those that grow first in front
    Length column_gap;
    Length row_gap;                       ///< at least…
    Length most_row_gap;                  ///< …and where there is room, at most
    std::vector<std::string> spare_under; ///< areas under which gaps grow; empty: all
    std::vector<Area> areas;              ///< in reading order of their top left corners
    std::vector<RuleUnder> rules;
    Length rule_gap;          ///< from a rule to what stands above and below it, at least
    bool large_print = false; ///< no page fewer is worth smaller type

    /// The one of that name; nullptr when there is none.
    const Area* area(std::string_view name) const;
    /// The first whose words take this field; nullptr when none does.
    const Area* area_with(std::string_view field) const;
};

/// What the print says in fields that it may not lack, and the layout has no place for.
std::vector<std::string> unplaced(const wording::Print& print, const Layout& layout);

} // namespace thawslip::layout
