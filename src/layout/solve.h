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
/// 1. the largest scale of at least comfortable with nothing left out; failing that,
/// 2. comfortable, with as few optional areas left out as will do — leaving something out buys
///    comfort, never size; failing that,
/// 3. with all of them left out, the largest scale down to the legal floor; failing that,
/// 4. the same with words cut that are wider than their area.
/// So a larger room never gives smaller type and never leaves out more.
std::optional<Sizing> solve(const Layout& layout, const Contents& contents, Size room,
                            const typeset::FontSet& fonts);

/// Makes the same area the same size on all prints of a sheet: that of the print with least room,
/// but not below comfortable. A print that had to go lower keeps its own size.
void agree(const std::vector<Sizing*>& all);

/// By how much a print that has no sizing is too large, and where.
Refusal explain(const Layout& layout, const Contents& contents, Size room,
                const wording::Print& print, const typeset::FontSet& fonts);

} // namespace thawslip::layout
