#include "kitchen/timeline/calendar.h"

#include "kitchen/timeline/icalendar_lines.h"

#include <algorithm>
#include <cassert>
#include <fmt/format.h>
#include <map>

namespace thawslip::kitchen {

namespace {

constexpr std::string_view event_length = "PT15M";

std::string_view name_of(TimelineStep step) {
    switch (step) {
    case TimelineStep::Thaw: return "thaw";
    case TimelineStep::Look: return "look";
    case TimelineStep::Start: return "start";
    case TimelineStep::Side: return "side";
    case TimelineStep::Add: return "add";
    case TimelineStep::Ready: break;
    }
    return "ready";
}

/// What an event is, whenever it is. The unit separator keeps the parts apart.
std::string identity(const TimelineEvent& event, const TimelineDish& dish) {
    std::string text = fmt::format("{}\x1f{}", name_of(event.what), dish.package.dish);
    for (const auto& bag : dish.bags)
        (text += '\x1f') += bag;
    if (event.finish)
        text += fmt::format("\x1f#{}", *event.finish);
    if (event.side)
        text += fmt::format("\x1fside {}", *event.side);
    return text;
}

void add_alarm(ICalendarLines& lines, const EventWords& words, std::chrono::minutes before) {
    lines.add("BEGIN", "VALARM");
    lines.add("ACTION", "DISPLAY");
    lines.add_text("DESCRIPTION", words.summary);
    lines.add("TRIGGER", before > std::chrono::minutes{0} ? fmt::format("-PT{}M", before.count())
                                                          : std::string{"PT0S"});
    lines.add("END", "VALARM");
}

void add_event(ICalendarLines& lines, std::string_view uid, Instant at, const EventWords& words,
               const CalendarSettings& settings) {
    lines.add("BEGIN", "VEVENT");
    lines.add("UID", uid);
    lines.add("DTSTAMP", icalendar_utc(settings.stamp));
    lines.add("DTSTART", icalendar_utc(at));
    lines.add("DURATION", event_length);
    lines.add_text("SUMMARY", words.summary);
    if (!words.description.empty())
        lines.add_text("DESCRIPTION", words.description);
    lines.add("TRANSP", "TRANSPARENT"); // the cook is not busy all that time
    add_alarm(lines, words,
              at - settings.alarm_before >= settings.stamp ? settings.alarm_before
                                                           : std::chrono::minutes{0});
    lines.add("END", "VEVENT");
}

/// Whether an event is still to come, of a dish that can still be done.
bool belongs_in(const Timeline& timeline, const TimelineEvent& event,
                const CalendarSettings& settings) {
    const auto outlook = timeline.dishes[event.dish].outlook;
    return event.at >= settings.stamp &&
           (outlook == Outlook::InTime || outlook == Outlook::FasterWay);
}

bool has_events(const Timeline& timeline, const CalendarSettings& settings) {
    return std::ranges::any_of(timeline.events, [&](const TimelineEvent& event) {
        return belongs_in(timeline, event, settings);
    });
}

} // namespace

std::string calendar_text(const Timeline& timeline, std::span<const TimelineDish> dishes,
                          std::span<const EventWords> words, const CalendarSettings& settings) {
    assert(words.size() == timeline.events.size() && "words for every event");
    if (!has_events(timeline, settings))
        return {};
    ICalendarLines lines;
    lines.add("BEGIN", "VCALENDAR");
    lines.add("VERSION", "2.0");
    lines.add("PRODID", "-//Thawslip//Cook-day timeline//EN");
    std::map<std::string, int> seen; // two dishes may be alike in every respect
    for (std::size_t i = 0; i < timeline.events.size(); ++i) {
        const TimelineEvent& event = timeline.events[i];
        if (!belongs_in(timeline, event, settings))
            continue;
        std::string identity_here = identity(event, dishes[event.dish]);
        const int repeat = seen[identity_here]++;
        if (repeat > 0)
            identity_here += fmt::format("\x1f={}", repeat);
        add_event(lines, uuid_of(identity_here), event.at, words[i], settings);
    }
    lines.add("END", "VCALENDAR");
    return std::move(lines).take();
}

} // namespace thawslip::kitchen
