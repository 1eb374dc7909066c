#pragma once

#include "layout/align.h"
#include "layout/areas/content.h"
#include "layout/areas/extent.h"

namespace thawslip::layout {

/// The code of a print that has one: a square as wide as its columns, where it may be no smaller.
struct CodeArea {
    Length least_side;           ///< what it asks for where it gives way; 0: it never does
    std::vector<int> shorten;    ///< gives way in this order when space is short; empty: never
    code::Durable durable;       ///< what it shall be made of before it says more
    Align align = Align::Centre; ///< of the symbol and its quiet zone in their place
};

/// What stands in the area of a code whose texts need squares of these sides, the fullest first:
/// one that gives way asks for each of them before it asks for its least side.
Content content_for(const CodeArea& area, std::vector<Length> needed);

/// How far the dots of a printer are apart.
Length dot(code::PrinterDots printer);

// What every kind of area answers; see area.h.
void read(toml::Table& table, const PrintFields& fields, CodeArea& area);
Result<Content, ContentFault> prepare(const CodeArea& area, const wording::Print& print,
                                      Shaper& shaper);
Length natural_width(const Content& content, const CodeArea& area, TypeSize type);
Extent measure(const Content& content, const CodeArea& area, TypeSize type, Length width,
               RowHeights rows);
std::vector<Item> draw(const Content& content, const CodeArea& area, TypeSize type, Rect place,
                       const Ink& ink);

} // namespace thawslip::layout
