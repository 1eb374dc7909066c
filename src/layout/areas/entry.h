#pragma once

#include "layout/areas/row_columns.h"
#include "layout/areas/text_area.h"

namespace thawslip::layout {

// How one prepared paragraph stands in its area: what `measure` counts and `set` draws. All widths
// are in em, all heights in leadings of the area's type, but where a thing's own type is named.

/// Where the baseline stands in a line's leading: room above for an accented capital, below for
/// a descender. Common practice, no source.
inline constexpr double baseline_share = 0.77;

inline constexpr double marker_width = 1.55; ///< a tick box or a short number, space included
inline constexpr double number_gap = 0.5;    ///< between a long number and what follows
inline constexpr double label_gap = 0.8;     ///< between the label column and the text
inline constexpr double rail_gap = 1.5;      ///< the same where the rail runs in it
inline constexpr double group_rise = 0.3;    ///< extra space above what begins a group in a column
inline constexpr double beside_gap = 1.6;    ///< between two languages side by side
inline constexpr double heading_drop = 0.3;  ///< below a heading, for its line
inline constexpr double heads_rise = 0.25;   ///< extra space above what heads columns

/// The space between strips side by side, in em.
inline constexpr double strip_gap = 2.4;

/// Where an area's markers and labels stand, how wide its labels may be, and where text begins.
struct Indents {
    double marker = 0.0;
    double label = 0.0;
    double label_width = 0.0;
    double text = 0.0;
};

/// What all paragraphs of one area share at one width.
struct Columns {
    Indents prose;       ///< of paragraphs that are no rows
    TableColumns table;  ///< empty where the area is no table
    double width = 0.0;  ///< of one strip
    int strips = 1;      ///< how many stand side by side
    double beside = 0.0; ///< where the second language begins, beside the first; 0: below it
};

Columns columns_of(const Content& content, const TextArea& area, Length em, Length room);

/// The indents of a cell by itself.
Indents indents_of(const PreparedEntry& cell, double width);

/// Where an entry's words stand, in em of its own type, which may be larger or smaller.
struct OwnPlace {
    Indents at;
    double width = 0.0;
};
OwnPlace own_place(const PreparedEntry& entry, const Indents& at, double width);

/// The place of an entry that is no row: a heading has the whole width.
OwnPlace own_place(const PreparedEntry& entry, const Columns& columns);

/// Where what the second language says of an entry stands: em to the right and leadings down from
/// the entry's top left corner.
struct SecondCorner {
    double right = 0.0;
    double down = 0.0;
};

/// \pre entry.second is not empty, and it is no row
SecondCorner second_corner(const PreparedEntry& entry, const Columns& columns);
OwnPlace second_place(const PreparedEntry& entry, const Columns& columns);

/// An entry's height without the space around it. Where it `opens` a strip, it says again what the
/// row above says too.
double height_of(const PreparedEntry& entry, const Columns& columns, bool opens = true);

/// The same without labels that hang in a column: what has no label follows directly below.
double words_height_of(const PreparedEntry& entry, const Columns& columns);

/// The height of a row without what stands below its cells.
double height_of_cells(const PreparedEntry& row, const Columns& columns, bool opens = true);

/// The place of the words that stand below the cells of a row: they begin where those of the first
/// begin.
OwnPlace row_place(const PreparedEntry& row, const Columns& columns);

/// How wide cell `i` of a row may be: into what the one beside it, which stands on the right,
/// leaves.
double cell_width(const PreparedEntry& row, std::size_t i, const Columns& columns);

/// The height of cell `i` of a row.
double height_of_cell(const PreparedEntry& row, std::size_t i, const Columns& columns);

/// The lines of its own words, those of its label beside them included.
int lines_of(const PreparedEntry& entry, const OwnPlace& place);

/// The place of what stands below an entry's words, which begins where they begin.
OwnPlace place_below(const PreparedEntry& below, const PreparedEntry& entry, const OwnPlace& place);

/// A head as it is said again on another strip.
const PreparedEntry& said_again(const PreparedEntry& head);

/// Whether there is anything to set: words, a label or a marker.
bool says_something(const PreparedEntry& entry);

/// Where its first baseline is, from its top.
double first_baseline(const PreparedEntry& entry);

/// Whether some word of it is wider than its place.
bool cuts_words(const PreparedEntry& entry, const Columns& columns);

/// Its width on one line, marker and label included. \pre it is no row
double entry_width(const PreparedEntry& entry);

} // namespace thawslip::layout
