#pragma once

#include "layout/areas/text_area.h"

#include <vector>

namespace thawslip::layout {

/// The space between the columns of a table, in em.
inline constexpr double table_gap = 1.1;

/// Where the columns of a table stand, in em.
struct TableColumns {
    std::vector<double> start;
    std::vector<double> width;
    std::vector<bool> leaves_room; ///< what stands in it stands on the right, and may leave some
    bool too_narrow = false; ///< what is given and what the contents need is wider than the area
};

/// The columns of an area that is a table and `width` wide, at a type size of `em`: those that
/// follow their content as wide as the widest cell of any row. \pre !area.table.empty()
TableColumns table_columns(const Content& content, const TextArea& area, Length em, Length width);

/// The least width, in em, at which every cell of the table stands on one line; 0 where there are
/// no rows. \pre !area.table.empty()
double table_natural_width(const Content& content, const TextArea& area, Length em);

/// The cells of a row, one for each column at most: those beyond the last column stand in it too,
/// one after the other, so that none is lost. \pre !area.table.empty()
std::vector<wording::Paragraph> cells_for(const wording::Paragraph& row, const TextArea& area);

/// The words of a row for an area that is no table, one cell after the other.
wording::Paragraph without_columns(const wording::Paragraph& row);

} // namespace thawslip::layout
