#pragma once

#include "kitchen/timeline/timeline.h"

#include <chrono>
#include <span>
#include <string>

namespace thawslip::kitchen {

/// The words of one event, made by whoever knows the language.
struct EventWords {
    std::string summary;     ///< "Move 2 bags of plum and ginger compote to the refrigerator"
    std::string description; ///< may be empty
};

struct CalendarSettings {
    std::chrono::sys_seconds stamp;       ///< when the calendar is made: DTSTAMP
    std::chrono::minutes alarm_before{0}; ///< the alarm rings this long before each event
};

/// A timeline as an iCalendar object (RFC 5545): one VEVENT of a quarter of an hour for each
/// event that is still to come, each with an alarm that displays its summary. Lines end in CRLF and
/// are folded at 75 octets, never inside a character.
///
/// Times are written in UTC (RFC 5545, 3.3.5, form 2). Thawing and cooking last as long as they
/// last whatever a clock shows, so the events are points in time; a floating time would move with
/// a phone that travels and be doubtful in the hour that comes twice in autumn, and a VTIMEZONE
/// would only repeat what every calendar knows of its own zone.
///
/// A UID depends on the dish, its bags, the step and the finishing ingredient, not on the time: a
/// plan that is made again replaces the old one in the calendar instead of standing beside it.
/// Events before the stamp, and those of dishes that only serve if they have thawed already, are
/// left out; an alarm that would have rung before the stamp rings with its event.
/// \pre one EventWords for each event; the timeline belongs to these dishes
/// \returns the text; empty when no event is left, because a calendar must hold something
/// Control characters and ill-formed UTF-8 in the words are left out.
std::string calendar_text(const Timeline& timeline, std::span<const TimelineDish> dishes,
                          std::span<const EventWords> words, const CalendarSettings& settings);

} // namespace thawslip::kitchen
