#include "kitchen/local_clock.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::kitchen {

namespace {

using std::chrono::minutes;

Instant at_offset(LocalMinute local, minutes offset) {
    return Instant{local.time_since_epoch() - offset};
}

} // namespace

minutes offset_at(const LocalClock& clock, Instant instant) {
    const auto next =
        std::upper_bound(clock.changes.begin(), clock.changes.end(), instant,
                         [](Instant when, const ClockChange& change) { return when < change.at; });
    return next == clock.changes.begin() ? clock.offset : std::prev(next)->offset;
}

LocalMinute on_clock(const LocalClock& clock, Instant instant) {
    return LocalMinute{instant.time_since_epoch() + offset_at(clock, instant)};
}

ClockReading read_clock(const LocalClock& clock, LocalMinute local) {
    // Only offsets in force within a day of `local` can make the clock show it.
    const Instant about = at_offset(local, minutes{0});
    const minutes early = offset_at(clock, about - std::chrono::days{1});
    const minutes late = offset_at(clock, about + std::chrono::days{1});

    const Instant by_early = at_offset(local, early);
    const Instant by_late = at_offset(local, late);
    const bool early_holds = offset_at(clock, by_early) == early;
    const bool late_holds = offset_at(clock, by_late) == late;
    if (early_holds && late_holds)
        return {std::min(by_early, by_late), by_early == by_late ? Shown::Once : Shown::Twice};
    if (early_holds)
        return {by_early, Shown::Once};
    if (late_holds)
        return {by_late, Shown::Once};
    return {by_early, Shown::Never};
}

std::string to_iso(LocalMinute local) {
    const auto day = std::chrono::floor<std::chrono::days>(local);
    const std::chrono::year_month_day date{day};
    const auto in_day = static_cast<int>((local - day).count());
    return fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()),
                       in_day / 60, in_day % 60);
}

std::string to_iso(const LocalClock& clock, Instant instant) {
    const auto offset = static_cast<int>(offset_at(clock, instant).count());
    const int size = offset < 0 ? -offset : offset;
    return fmt::format("{}{}{:02}:{:02}", to_iso(on_clock(clock, instant)), offset < 0 ? '-' : '+',
                       size / 60, size % 60);
}

} // namespace thawslip::kitchen
