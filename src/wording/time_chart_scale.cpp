#include "wording/time_chart_scale.h"

#include "wording/timeline_words.h"
#include "wording/typography.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

using kitchen::Doing;

std::string_view key_of(Doing what) {
    switch (what) {
    case Doing::Thawing: return "plan-sheet.thawing";
    case Doing::Waiting: return "plan-sheet.waiting";
    case Doing::Beside: return "plan-sheet.beside";
    case Doing::Cooking: break;
    }
    return "plan-sheet.cooking";
}

/// "18:00", and where a day begins "Thu 3".
std::string tick_label(const kitchen::ClockTick& tick, const kitchen::LocalClock& clock,
                       const Language& language) {
    const auto local = on_clock(clock, tick.at);
    return with_no_break_spaces(tick.step == kitchen::clock_steps().back()
                                    ? say_day_of_month(local, language)
                                    : say_time_of_day(local, language));
}

/// What is written above a stretch, for each step that its marks may have.
std::vector<TimeChart::Stretch::Caption> captions(std::string_view whole, const Style& style) {
    std::vector<TimeChart::Stretch::Caption> captions;
    for (const auto step : kitchen::clock_steps()) {
        const auto marks =
            style.say("plan-sheet.marks", {with_no_break_spaces(say_span(step, style.language))});
        captions.push_back({step, whole.empty() ? marks : style.say(whole, {marks})});
    }
    return captions;
}

std::string_view caption_key(std::size_t stretch, std::size_t count) {
    return count == 1 ? "" : stretch + 1 == count ? "plan-sheet.hours" : "plan-sheet.days";
}

bool occurs(Doing what, std::span<const kitchen::Lane> lanes) {
    return std::ranges::any_of(lanes, [what](const kitchen::Lane& lane) {
        return std::ranges::find(lane.spans, what, &kitchen::LaneSpan::what) != lane.spans.end();
    });
}

} // namespace

std::vector<TimeChart::Stretch> chart_stretches(std::span<const kitchen::Stretch> stretches,
                                                const kitchen::LocalClock& clock,
                                                const Style& style) {
    std::vector<TimeChart::Stretch> drawn;
    for (std::size_t i = 0; i < stretches.size(); ++i) {
        const auto zero = stretches.front().from;
        TimeChart::Stretch stretch{stretches[i].from - zero,
                                   stretches[i].to - zero,
                                   {},
                                   captions(caption_key(i, stretches.size()), style)};
        for (const auto& tick : ticks_of(stretches[i], clock)) {
            stretch.ticks.push_back(
                {tick.at - zero, tick.step, tick_label(tick, clock, style.language)});
        }
        drawn.push_back(std::move(stretch));
    }
    return drawn;
}

TimeChart::Fill fill_of(Doing what) {
    switch (what) {
    case Doing::Thawing: return TimeChart::Fill::Hatched;
    case Doing::Waiting: return TimeChart::Fill::Empty;
    case Doing::Beside: return TimeChart::Fill::Beside;
    case Doing::Cooking: break;
    }
    return TimeChart::Fill::Solid;
}

std::vector<TimeChart::Key> chart_keys(std::span<const kitchen::Lane> lanes, const Style& style) {
    std::vector<TimeChart::Key> keys;
    for (const auto what : {Doing::Thawing, Doing::Waiting, Doing::Cooking, Doing::Beside}) {
        if (occurs(what, lanes)) {
            keys.push_back({fill_of(what), style.say(key_of(what))});
        }
    }
    return keys;
}

} // namespace thawslip::wording
