#pragma once

#include "kitchen/timeline/lanes.h"
#include "wording/print.h"
#include "wording/style.h"

#include <span>
#include <vector>

namespace thawslip::wording {

/// What of a plan stands on one sheet.
struct PlanPart {
    std::vector<kitchen::Lane> lanes; ///< never empty
    int number = 1;                   ///< of the sheet…
    int of = 1;                       ///< …among so many
};

/// A sheet of a plan with its title and when it is eaten, and nothing below but whose rules come
/// first. \param title its words
Print new_plan(const kitchen::Timeline& line, const std::string& title, const Style& style);

/// The plan of a dinner as a drawing to scale: a lane for each dish, and at each moment what is to
/// be done, with a box, and what to mind. What is to be said of the whole table stands above the
/// lanes, what is of one dish at its moment or at the head of its lane; so no remark of the plan is
/// lost. The field "lanes" says the same as the chart in a row.
/// \pre the lanes are of this timeline, the timeline of these dishes
Print plan_sheet(const kitchen::Timeline& line, std::span<const kitchen::TimelineDish> dishes,
                 const PlanPart& part, const Style& style);

} // namespace thawslip::wording
