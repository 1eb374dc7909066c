#pragma once

#include "layout/areas/content.h"
#include "layout/areas/extent.h"

namespace thawslip::layout {

/// The pattern by which the bags of one dish are told from those of another before anything is
/// read: one of `patterns`, by the dish's number of the day.
struct PatternArea {
    Length height; ///< it stands so high on the first line of its row; 0: it fills its place
};

/// How many patterns there are; a further dish begins again, and only its number tells it apart.
inline constexpr int patterns = 6;

// What every kind of area answers; see area.h.
void read(toml::Table& table, const PrintFields& fields, PatternArea& area);
Result<Content, ContentFault> prepare(const PatternArea& area, const wording::Print& print,
                                      Shaper& shaper);
Length natural_width(const Content& content, const PatternArea& area, TypeSize type);
Extent measure(const Content& content, const PatternArea& area, TypeSize type, Length width,
               RowHeights rows);
std::vector<Item> draw(const Content& content, const PatternArea& area, TypeSize type, Rect place,
                       const Ink& ink);

} // namespace thawslip::layout
