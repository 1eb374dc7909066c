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
inline constexpr double heading_rise = 0.45; ///< extra space above a heading that is not the first

/// Where an area's text begins, after markers and labels.
struct Indents {
    double label = 0.0;
    double text = 0.0;
};

/// What all paragraphs of one area share at one width.
struct Columns {
    Indents prose;      ///< of paragraphs that are no rows
    TableColumns table; ///< empty where the area is no table
    double width = 0.0;
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

/// An entry's height without the space around it.
double height_of(const PreparedEntry& entry, const Columns& columns);

/// The height of cell `i` of a row.
double height_of_cell(const PreparedEntry& row, std::size_t i, const Columns& columns);

/// Whether there is anything to set: words, a label or a marker.
bool says_something(const PreparedEntry& entry);

/// Where its first baseline is, from its top.
double first_baseline(const PreparedEntry& entry);

/// Whether some word of it is wider than its place.
bool cuts_words(const PreparedEntry& entry, const Columns& columns);

/// Its width on one line, marker and label included. \pre it is no row
double entry_width(const PreparedEntry& entry);

} // namespace thawslip::layout
