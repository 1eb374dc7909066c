#pragma once

#include "kitchen/plan.h"
#include "kitchen/timeline/calendar.h"
#include "kitchen/timeline/timeline.h"
#include "service/messages.h"
#include "wording/style.h"

#include <span>
#include <string>
#include <vector>

namespace thawslip::service {

/// What is to be eaten when.
struct DinnerQuestion {
    std::string words; ///< of the dishes meant, or their beginnings, a comma between several;
                       ///< empty: all of them
    kitchen::LocalMinute eat;
    kitchen::Instant now;
    kitchen::LocalClock clock; ///< from the weeks before `now` and `eat` to those after
    kitchen::ThawSettings thaw;
    int of_each = 1; ///< how many bags of each package are wanted: it is said where there are fewer
};

/// A stretch of time that a clock is asked for.
struct ClockSpan {
    kitchen::Instant from;
    kitchen::Instant to;
};

/// The time around a dinner, and around when it is planned: thawing starts at most some weeks
/// before.
ClockSpan clock_span(kitchen::LocalMinute eat, kitchen::Instant now);

/// A timeline with the words for each of its events.
struct DinnerPlan {
    std::vector<kitchen::TimelineDish> dishes;
    kitchen::Timeline line;
    std::vector<kitchen::EventWords> words;
    kitchen::Instant now;
};

/// When to thaw, start, add and serve, so that all dishes are ready at one time. Refused where no
/// package is of the dishes meant.
Outcome<DinnerPlan> dinner_plan(std::span<const kitchen::PlannedPackage> packages,
                                const DinnerQuestion& question, const wording::Style& style);

/// The plan as a calendar (RFC 5545) with what can still be done. A dish that cannot is named, for
/// it is missed in a calendar; refused where nothing can be done.
Outcome<std::string> dinner_calendar(const DinnerPlan& plan);

} // namespace thawslip::service
