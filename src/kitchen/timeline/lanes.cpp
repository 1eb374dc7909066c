#include "kitchen/timeline/lanes.h"

#include <algorithm>
#include <array>

namespace thawslip::kitchen {
namespace {

using std::chrono::minutes;

constexpr std::array<minutes, 8> steps = {minutes{5},   minutes{15},  minutes{30},  minutes{60},
                                          minutes{180}, minutes{360}, minutes{720}, minutes{1440}};

constexpr minutes hour{60};

/// Thawing that is quicker than this belongs to the hours of cooking: water and microwave.
constexpr minutes short_thaw = hour * 6;

void add(std::vector<LaneSpan>& spans, LaneSpan span) {
    if (span.from < span.to) {
        spans.push_back(span);
    }
}

std::vector<LaneSpan> spans_of(const DishTimeline& dish, Instant eat) {
    std::vector<LaneSpan> spans;
    const Instant start = dish.cook ? dish.cook->at : eat;
    if (dish.outlook == Outlook::InTime && dish.thaw) {
        const Instant thawed = std::min(dish.thaw->at + dish.thaw->lead.lead, start);
        add(spans, {Doing::Thawing, dish.thaw->at, thawed});
        add(spans, {Doing::Waiting, thawed, start});
    }
    if (dish.outlook == Outlook::FasterWay) {
        add(spans, {Doing::Thawing, dish.ways.front().begin, dish.ways.front().start});
    }
    if (dish.cook && dish.outlook != Outlook::TooLate) {
        add(spans, {Doing::Cooking, dish.cook->at, eat});
    }
    for (const auto& side : dish.sides) {
        add(spans, {Doing::Beside, side.at, side.ready});
    }
    return spans;
}

bool is_long_thaw(const LaneSpan& span) {
    return span.what == Doing::Waiting ||
           (span.what == Doing::Thawing && span.to - span.from >= short_thaw);
}

/// Where the last hours begin: with the first thing in whose course nobody sleeps.
Instant last_hours(std::span<const Lane> lanes, Instant end) {
    Instant begin = end;
    for (const auto& lane : lanes) {
        for (const auto& span : lane.spans) {
            begin = is_long_thaw(span) ? begin : std::min(begin, span.from);
        }
    }
    return begin;
}

Instant hour_before(Instant instant, const LocalClock& clock) {
    const auto since_midnight = on_clock(clock, instant).time_since_epoch();
    return instant - (since_midnight - std::chrono::floor<std::chrono::hours>(since_midnight));
}

Stretch whole_of(std::span<const Lane> lanes) {
    Stretch whole{Instant::max(), Instant::min()};
    const auto take = [&whole](Instant from, Instant to) {
        whole = {std::min(whole.from, from), std::max(whole.to, to)};
    };
    for (const auto& lane : lanes) {
        for (const auto& span : lane.spans) {
            take(span.from, span.to);
        }
        for (const auto& event : lane.events) {
            take(event.at, event.at);
        }
    }
    return whole;
}

} // namespace

std::vector<Lane> lanes_of(const Timeline& line) {
    std::vector<Lane> lanes;
    for (std::size_t dish = 0; dish < line.dishes.size(); ++dish) {
        Lane lane{dish, spans_of(line.dishes[dish], line.eat), {}, false};
        std::ranges::copy_if(line.events, std::back_inserter(lane.events),
                             [dish](const TimelineEvent& event) { return event.dish == dish; });
        lanes.push_back(std::move(lane));
    }
    return lanes;
}

Lane part_of(const Lane& lane, std::size_t first, std::size_t count) {
    const auto next = first + count;
    const bool is_last = next == lane.events.size();
    const Instant from = first == 0 ? Instant::min() : lane.events[first].at;
    const Instant to = is_last ? Instant::max() : lane.events[next].at;
    Lane part{lane.dish, {}, {}, first > 0};
    for (const auto& span : lane.spans) {
        add(part.spans, {span.what, std::max(span.from, from), std::min(span.to, to)});
    }
    part.events.assign(lane.events.begin() + static_cast<std::ptrdiff_t>(first),
                       lane.events.begin() + static_cast<std::ptrdiff_t>(next));
    return part;
}

std::vector<Stretch> stretches_of(std::span<const Lane> lanes, const LocalClock& clock) {
    const auto whole = whole_of(lanes);
    if (whole.from > whole.to) {
        return {};
    }
    const Stretch all{hour_before(whole.from, clock), std::max(whole.to, whole.from + hour)};
    const Instant parted = hour_before(last_hours(lanes, all.to), clock);
    if (parted - all.from <= (all.to - parted) * 2 || all.to - parted < minutes{1}) {
        return {all};
    }
    return {{all.from, parted}, {parted, all.to}};
}

std::span<const minutes> clock_steps() {
    return steps;
}

std::vector<ClockTick> ticks_of(const Stretch& stretch, const LocalClock& clock) {
    constexpr minutes long_one = hour * 30;
    const minutes finest = stretch.to - stretch.from > long_one ? hour : steps.front();
    std::vector<ClockTick> ticks;
    for (Instant at = stretch.from; at <= stretch.to; at += steps.front()) {
        const auto shown = on_clock(clock, at).time_since_epoch();
        const auto found = std::ranges::find_if(
            steps.rbegin(), steps.rend(), [&](minutes step) { return shown % step == minutes{0}; });
        if (found != steps.rend() && *found >= finest) {
            ticks.push_back({at, *found});
        }
    }
    return ticks;
}

} // namespace thawslip::kitchen
