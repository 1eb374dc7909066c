#include "kitchen/timeline/local_clock.h"

#include "base/letters.h"
#include "kitchen/date.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::kitchen {

namespace {

using std::chrono::minutes;

Instant at_offset(LocalMinute local, minutes offset) {
    return Instant{local.time_since_epoch() - offset};
}

/// The number below 100 that two digits at `at` make.
std::optional<int> two_digits(std::string_view text, std::size_t at) {
    return is_digit(text[at]) && is_digit(text[at + 1])
               ? std::optional{10 * (text[at] - '0') + (text[at + 1] - '0')}
               : std::nullopt;
}

} // namespace

std::optional<LocalMinute> parse_local_minute(std::string_view text) {
    using namespace std::chrono;
    constexpr std::string_view form = "2026-12-03T18:30"; // or a space for the T
    const auto date = text.size() == form.size() ? parse_iso(text.substr(0, 10)) : std::nullopt;
    if (!date || (text[10] != ' ' && text[10] != 'T') || text[13] != ':')
        return std::nullopt;
    const auto hour = two_digits(text, 11);
    const auto minute = two_digits(text, 14);
    const bool in_range = date->year() >= year{1990} && date->year() <= year{2200};
    if (!in_range || !hour || !minute || *hour > 23 || *minute > 59)
        return std::nullopt;
    return local_days{*date} + hours{*hour} + minutes{*minute};
}

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

std::optional<std::chrono::minutes> parse_time_of_day(std::string_view text) {
    const auto on_some_day = parse_local_minute("2000-01-01 " + std::string{text});
    return on_some_day ? std::optional{on_some_day->time_since_epoch() % std::chrono::days{1}}
                       : std::nullopt;
}

std::string to_iso(LocalMinute local) {
    const auto day = std::chrono::floor<std::chrono::days>(local);
    const auto in_day = static_cast<int>((local - day).count());
    return fmt::format("{}T{:02}:{:02}", to_iso(Date{day}), in_day / 60, in_day % 60);
}

} // namespace thawslip::kitchen
