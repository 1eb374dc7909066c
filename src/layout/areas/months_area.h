#pragma once

#include "layout/areas/content.h"
#include "layout/areas/extent.h"
#include "typeset/face.h"

namespace thawslip::layout {

/// The twelve months of a year side by side, that of the print's limit black, and its year at the
/// end: where bags stand in a row, age is a place along their edges. Words: the field
/// `month-strip`.
struct MonthsArea {
    int drop = 0;      ///< as a text area's
    double size = 1.0; ///< of its letters, in the least x-height
};

/// Letters of the least size allowed.
TypeSize type_at(const MonthsArea& area, const typeset::FontSet& fonts);

// What every kind of area answers; see area.h.
void read(toml::Table& table, const PrintFields& fields, MonthsArea& area);
Result<Content, ContentFault> prepare(const MonthsArea& area, const wording::Print& print,
                                      Shaper& shaper);
Length natural_width(const Content& content, const MonthsArea& area, TypeSize type);
Extent measure(const Content& content, const MonthsArea& area, TypeSize type, Length width,
               RowHeights rows);
std::vector<Item> draw(const Content& content, const MonthsArea& area, TypeSize type, Rect place,
                       const Ink& ink);

} // namespace thawslip::layout
