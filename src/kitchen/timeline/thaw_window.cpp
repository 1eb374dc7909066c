#include "kitchen/timeline/thaw_window.h"

#include <algorithm>

namespace thawslip::kitchen {

namespace {

using std::chrono::days;
using std::chrono::minutes;

bool knows_waking(const TimelineRequest& request) {
    return request.day_begins >= minutes{0} && request.day_begins < request.day_ends &&
           request.day_ends < days{1};
}

/// The latest time up to `limit` when somebody is up, by the clock; `limit` itself where the
/// hours of the day make no sense.
Instant latest_waking(Instant limit, const TimelineRequest& request) {
    if (!knows_waking(request))
        return limit;
    const LocalMinute local = on_clock(request.clock, limit);
    const auto midnight = std::chrono::floor<days>(local);
    if (local < midnight + request.day_begins)
        return read_clock(request.clock, midnight - days{1} + request.day_ends).instant;
    if (local > midnight + request.day_ends)
        return read_clock(request.clock, midnight + request.day_ends).instant;
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

    Instant at = latest_waking(no_later, request);
    if (at < request.now && request.now <= no_later)
        at = request.now;
    if (at >= window.no_earlier && at <= no_later)
        window.at = at;
    return window;
}

Instant earliest_waking(Instant limit, const TimelineRequest& request) {
    const LocalMinute local = on_clock(request.clock, limit);
    const auto midnight = std::chrono::floor<days>(local);
    if (!knows_waking(request))
        return limit;
    if (local < midnight + request.day_begins)
        return read_clock(request.clock, midnight + request.day_begins).instant;
    if (local > midnight + request.day_ends)
        return read_clock(request.clock, midnight + days{1} + request.day_begins).instant;
    return limit;
}

bool is_tight(const ThawWindow& window) {
    return window.lead.method == ThawMethod::Refrigerator && window.no_earlier == window.no_later;
}

} // namespace thawslip::kitchen
