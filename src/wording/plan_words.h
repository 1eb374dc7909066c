#pragma once

#include "kitchen/timeline/timeline.h"
#include "kitchen/timeline/timeline_remark.h"
#include "wording/print.h"
#include "wording/style.h"

#include <span>
#include <string>
#include <vector>

namespace thawslip::wording {

// What the sheets of a dinner's plan say, whether they draw it or list it.

/// A plan, and how its sheets speak.
struct PlanSource {
    const kitchen::Timeline& line;
    std::span<const kitchen::TimelineDish> dishes; ///< of this timeline
    const Style& style;

    kitchen::LocalMinute clock(kitchen::Instant at) const { return on_clock(line.clock, at); }
};

/// Whether a remark about a dish is to be minded at this event of its plan. One that is at none is
/// said before all.
bool is_minded_at(const kitchen::TimelineRemark& remark, const kitchen::TimelineEvent& event);

/// What is to be minded at an event, a paragraph each, but for what its description says already.
std::vector<Paragraph> minded_at(const kitchen::TimelineEvent& event,
                                 const std::string& description, const PlanSource& from);

/// What is said of a dish before all that is to be done with it: that it is too late as planned
/// and what can still be done, and remarks that have no event of their own. None where there is
/// nothing of the kind.
std::vector<Paragraph> notices_of(std::size_t dish, const PlanSource& from);

/// What is to be said of the whole table.
Field remarks_field(const PlanSource& from);

/// "RAW · Mince patties (for 2)".
std::string dish_name(std::size_t dish, const PlanSource& from);

} // namespace thawslip::wording
