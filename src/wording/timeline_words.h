#pragma once

#include "kitchen/timeline/calendar.h"
#include "kitchen/timeline/timeline.h"
#include "wording/style.h"

#include <span>
#include <string>

namespace thawslip::wording {

/// `Wed 2 Dec 2026`.
std::string say_weekday_date(kitchen::LocalMinute local, const Language& language);

/// `Wed 2`: a day on a scale, where the month is known.
std::string say_day_of_month(kitchen::LocalMinute local, const Language& language);

/// `Wed 2 Dec 2026, 11:00`: the weekday, because that is what a week is planned by.
std::string say_clock(kitchen::LocalMinute local, const Language& language);

/// `11:00`, by the 24-hour clock, so that nobody mistakes the morning for the evening.
std::string say_time_of_day(kitchen::LocalMinute local, const Language& language);

/// `36 h`, `2½ h`, `3 days`: whole days from two on.
std::string say_span(std::chrono::minutes span, const Language& language);

/// Whether what is said of an event names its dish and its day; names the dish alone, in a list
/// below the day; or stands in a lane that is the dish's own, beside the day.
enum class DishNamed { InSentence, InList, ByLane };

/// What happens at one event, as a sentence without a full stop, and below it what else there is
/// to know: the window for thawing and starting, where an ingredient waits, the temperature.
/// \pre the event belongs to the timeline, the timeline to these dishes
kitchen::EventWords say_event(const kitchen::Timeline& timeline,
                              std::span<const kitchen::TimelineDish> dishes,
                              const kitchen::TimelineEvent& event, const Style& style,
                              DishNamed named = DishNamed::InSentence);

/// One remark as a sentence; English where this language's table has none for it.
/// \pre the timeline belongs to these dishes
std::string say_remark(const kitchen::Timeline& timeline,
                       std::span<const kitchen::TimelineDish> dishes,
                       const kitchen::TimelineRemark& remark, const Style& style);

} // namespace thawslip::wording
