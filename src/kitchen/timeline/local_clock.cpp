#include "kitchen/timeline/local_clock.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::kitchen {

namespace {

using std::chrono::minutes;

Instant at_offset(LocalMinute local, minutes offset) {
    return Instant{local.time_since_epoch() - offset};
}

/// The number that the digits of `pattern`'s letter stand for: 2026 for 'Y' of "YYYY-MM-DD".
int number_at(std::string_view text, std::string_view pattern, char letter) {
    int number = 0;
    for (std::size_t i = 0; i < pattern.size(); ++i) {
        if (pattern[i] == letter)
            number = number * 10 + (text[i] - '0');
    }
    return number;
}

/// Whether `text` has a digit for every letter of `pattern` and is the same elsewhere.
bool has_shape(std::string_view text, std::string_view pattern) {
    return std::equal(text.begin(), text.end(), pattern.begin(), pattern.end(),
                      [](char c, char shape) {
                          const bool is_letter = shape >= 'A' && shape <= 'Z' && shape != 'T';
                          return is_letter ? c >= '0' && c <= '9' : c == shape;
                      });
}

} // namespace

std::optional<LocalMinute> parse_local_minute(std::string_view text) {
    using namespace std::chrono;
    constexpr std::string_view pattern = "YYYY-MM-DD HH:NN";
    if (!has_shape(text, pattern) && !has_shape(text, "YYYY-MM-DDTHH:NN"))
        return std::nullopt;
    const auto part = [&](char letter) { return number_at(text, pattern, letter); };
    const year_month_day date{year{part('Y')}, month{static_cast<unsigned>(part('M'))},
                              day{static_cast<unsigned>(part('D'))}};
    const bool in_range = part('Y') >= 1990 && part('Y') <= 2200;
    if (!in_range || !date.ok() || part('H') > 23 || part('N') > 59)
        return std::nullopt;
    return local_days{date} + hours{part('H')} + minutes{part('N')};
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
