#pragma once

#include "thawslip/kitchen.h"

#include <string>
#include <vector>

namespace thawslip {

/// What is to be eaten when. Times are what the kitchen clock shows, ISO 8601: `2026-12-03T18:30`.
struct DinnerQuestion {
    std::string dishes; ///< words of the dishes meant, or their beginnings; empty: all
    std::string eat;
    std::string now;
    int minutes_ahead_of_utc = 0; ///< of the kitchen clock, from now until it is eaten
};

/// Something that has to be done.
struct DinnerStep {
    std::string at; ///< what the kitchen clock shows
    std::string dish;
    std::string words; ///< in the language that is set
};

struct Dinner {
    std::vector<DinnerStep> steps; ///< in order of time
    std::string calendar;          ///< the same as iCalendar (RFC 5545); empty: nothing is to come
};

/// When to thaw, start, add and serve, so that all dishes are ready at one time.
Outcome<Dinner> plan_dinner(const Kitchen& kitchen, const std::vector<DayText>& days,
                            const DinnerQuestion& question);

} // namespace thawslip
