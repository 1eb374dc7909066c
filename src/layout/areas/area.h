#pragma once

#include "layout/areas/chart_area.h"
#include "layout/areas/code_area.h"
#include "layout/areas/months_area.h"
#include "layout/areas/pattern_area.h"
#include "layout/areas/text_area.h"
#include "layout/areas/write_area.h"

#include <span>
#include <string>
#include <variant>
#include <vector>

namespace thawslip::layout {

/// Which tracks of a layout an area covers, as its picture draws it.
struct GridArea {
    int row = 0; ///< top row and left column, from 0
    int column = 0;
    int rows = 1; ///< how many it spans
    int columns = 1;
};

/// A named rectangle of a layout's picture and what stands in it.
struct Area {
    std::string name;
    GridArea grid;
    Stand stand = Stand::Top;
    std::variant<TextArea, CodeArea, WriteArea, ChartArea, PatternArea, MonthsArea> kind;
};

/// How an area with words sets them, or the heading of one to write in; else nullptr.
const TextArea* text_of(const Area& area);
TextArea* text_of(Area& area);

/// The words by which a layout file names the kinds.
std::vector<std::string> area_kinds();

/// Reads what stands in an area: its kind and what that kind has to say. What is wrong is reported
/// through the table's reader.
void read(toml::Table& table, const PrintFields& fields, Area& area);

/// What stands in the area on this print: its fields, shaped; or a character that no face has.
Result<Content, ContentFault> prepare(const Area& area, const wording::Print& print,
                                      Shaper& shaper);

/// In which order the area drops when space is short; 0: never.
int drop_of(const Area& area);

/// In which order the area takes the shorter of its forms, from 1 on; 0: never.
int shorten_of(const Area& area, std::size_t form);

/// The type of an area with words; nothing for others.
TypeSize type_at(const Area& area, Scale scale, const typeset::FontSet& fonts);

/// What a `content` column needs: the width of the longest paragraph on one line.
Length natural_width(const Content& content, const Area& area, TypeSize type);

/// What the area asks for at this width. \pre width > 0
Extent measure(const Content& content, const Area& area, TypeSize type, Length width,
               RowHeights rows = RowHeights::FollowContent);

/// What is drawn at `place`, which is as high as `measure` asked for.
std::vector<Item> draw(const Content& content, const Area& area, TypeSize type, Rect place,
                       const Ink& ink = {});

} // namespace thawslip::layout
