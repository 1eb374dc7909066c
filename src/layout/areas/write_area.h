#pragma once

#include "layout/areas/content.h"
#include "layout/areas/extent.h"
#include "layout/areas/text_area.h"

namespace thawslip::layout {

/// Room for a pen: asks for none, and is ruled where its row has room for two lines at least, below
/// its heading.
struct WriteArea {
    TextArea heading; ///< without words: none
};

// What every kind of area answers; see area.h.
void read(toml::Table& table, const PrintFields& fields, WriteArea& area);
Result<Content, ContentFault> prepare(const WriteArea& area, const wording::Print& print,
                                      Shaper& shaper);
Length natural_width(const Content& content, const WriteArea& area, TypeSize type);
Extent measure(const Content& content, const WriteArea& area, TypeSize type, Length width,
               RowHeights rows);
std::vector<Item> draw(const Content& content, const WriteArea& area, TypeSize type, Rect place,
                       const Ink& ink);

} // namespace thawslip::layout
