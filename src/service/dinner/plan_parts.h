#pragma once

#include "wording/plan_sheet.h"

#include <vector>

namespace thawslip::service {

/// How a plan is spread over sheets.
struct PlanSpread {
    std::size_t lanes = 1;  ///< side by side on a sheet, at most
    std::size_t pieces = 1; ///< into which each lane is cut, by its events
};

/// The lanes of a plan on their sheets, in order: no sheet has more than one lane more than
/// another, and the pieces of lanes that stand together follow each other. \pre no number is 0;
/// there are lanes
std::vector<wording::PlanPart> plan_parts(const std::vector<kitchen::Lane>& lanes,
                                          PlanSpread spread);

} // namespace thawslip::service
