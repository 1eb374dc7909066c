#pragma once

#include "layout/arrange.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::layout {

/// Words that do not fit, even at the legal floor with everything optional left out.
struct Refusal {
    std::string dish;
    std::string bag_id;
    std::string area; ///< the area that asks for most
    Length short_by;  ///< how much higher or wider the cell would have to be
    KeyPath where;
};

/// The largest sizes at which everything fits in `room`:
/// 1. with nothing left out, every group at comfortable or above: the first group as large as it
///    can be on the lines that it takes at comfortable while the others are comfortable, then the
///    next with what room is left, and what is left after the last to the first; failing that,
/// 2. all comfortable, with as few concessions as will do: an optional area left out, or one said
///    shorter. Those for which the last of them left room are taken back. They buy comfort, never
///    size; failing that,
/// 3. with all of them made, the first group below comfortable, half the way to its smallest at
///    most, and the others comfortable; failing that,
/// 4. the last group below comfortable, down to the legal floor, then the one before it; those
///    behind that, and what was conceded, come back as far as there is room; failing that,
/// 5. the same with words cut that are wider than their area.
/// A paragraph with a word that is too wide even at its smallest, with all conceded, is cut from
/// the start. But for such words a larger room never leaves out more, and where there is one group
/// never gives smaller type.
std::optional<Sizing> solve(const Layout& layout, const Contents& contents, Size room,
                            const typeset::FontSet& fonts);

/// A print and the sizes that were found for it.
struct SizedPrint {
    const Layout& layout;
    const Contents& contents;
    Size room;
    Sizing& sizing;
};

/// Makes the same area the same size on all prints of a sheet, group by group: that of the print
/// with least room. Prints that had to go below comfortable agree among themselves, so a sheet has
/// at most two sizes of a thing. The last of several groups has one more: each bag's face is read
/// alone, and a crowded one is not to make all others small. What a group gives up goes to those
/// behind it. \pre all have one layout
void agree(const std::vector<SizedPrint>& all, const typeset::FontSet& fonts);

/// The same for the pages of one list, which are read as one: each group has one size on all of
/// them, that of the page with least room. \pre all have one layout
void agree_on_one(const std::vector<SizedPrint>& all, const typeset::FontSet& fonts);

/// By how much a print that has no sizing is too large, and where.
Refusal explain(const Layout& layout, const Contents& contents, Size room,
                const wording::Print& print, const typeset::FontSet& fonts);

} // namespace thawslip::layout
