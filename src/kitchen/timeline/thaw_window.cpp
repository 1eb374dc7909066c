#include "kitchen/timeline/thaw_window.h"

#include <algorithm>

namespace thawslip::kitchen {

namespace {

using std::chrono::days;
using std::chrono::minutes;

// When somebody is up to move a bag, by the clock: common practice, no source.
constexpr std::chrono::hours day_begins{7};
constexpr std::chrono::hours day_ends{22};

/// The latest time up to `limit` when somebody is up, by the clock.
Instant latest_waking(Instant limit, const LocalClock& clock) {
    const LocalMinute local = on_clock(clock, limit);
    const auto midnight = std::chrono::floor<days>(local);
    if (local < midnight + day_begins)
        return read_clock(clock, midnight - days{1} + day_ends).instant;
    if (local > midnight + day_ends)
        return read_clock(clock, midnight + day_ends).instant;
    return limit;
}

} // namespace

ThawWindow thaw_window(const ThawLead& lead, Instant start, std::chrono::hours keeps_thawed,
                       const TimelineRequest& request) {
    const Instant no_later = start - lead.lead;
    ThawWindow window{.no_earlier = no_later, .no_later = no_later, .at = no_later, .lead = lead};
    if (lead.method != ThawMethod::Refrigerator)
        return window;
    // A year is beyond any food; the bound keeps the arithmetic inside the calendar.
    const minutes keeps = std::clamp<minutes>(keeps_thawed, minutes{0}, days{366});
    window.no_earlier = std::min(no_later, start - keeps - lead.soonest);

    Instant at = latest_waking(no_later, request.clock);
    if (at < request.now && request.now <= no_later)
        at = request.now;
    if (at >= window.no_earlier && at <= no_later)
        window.at = at;
    return window;
}

Instant earliest_waking(Instant limit, const LocalClock& clock) {
    const LocalMinute local = on_clock(clock, limit);
    const auto midnight = std::chrono::floor<days>(local);
    if (local < midnight + day_begins)
        return read_clock(clock, midnight + day_begins).instant;
    if (local > midnight + day_ends)
        return read_clock(clock, midnight + days{1} + day_begins).instant;
    return limit;
}

bool is_tight(const ThawWindow& window) {
    return window.lead.method == ThawMethod::Refrigerator && window.no_earlier == window.no_later;
}

} // namespace thawslip::kitchen
