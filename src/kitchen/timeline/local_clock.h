#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// A point in time, the same for everybody, to the minute.
using Instant = std::chrono::sys_time<std::chrono::minutes>;

/// What the kitchen clock shows, to the minute.
using LocalMinute = std::chrono::local_time<std::chrono::minutes>;

/// From `at` on, the kitchen clock is `offset` ahead of UTC.
struct ClockChange {
    Instant at;
    std::chrono::minutes offset{0};
    friend bool operator==(const ClockChange&, const ClockChange&) = default;
};

/// The kitchen clock as plain data: whoever can ask the system writes down the changes of the
/// months in question, and everything after that is arithmetic.
struct LocalClock {
    std::chrono::minutes offset{0};   ///< ahead of UTC before the first change
    std::vector<ClockChange> changes; ///< in order of `at`
};

std::chrono::minutes offset_at(const LocalClock& clock, Instant instant);
LocalMinute on_clock(const LocalClock& clock, Instant instant);

/// How often the clock shows a given time: the hour that is skipped in spring never, the one that
/// comes again in autumn twice.
enum class Shown { Never, Once, Twice };

struct ClockReading {
    Instant instant;
    Shown shown = Shown::Once;
};

/// When the clock shows `local`. Of two times the earlier, so that cooking never starts too late.
/// A skipped time is read as if the clock had not been put on: 02:30 becomes 03:30.
ClockReading read_clock(const LocalClock& clock, LocalMinute local);

/// Reads `2026-12-03 18:30` and `2026-12-03T18:30`; nothing for any other text, and none for a day
/// or time that no calendar has, or a year outside 1990 to 2200.
std::optional<LocalMinute> parse_local_minute(std::string_view text);

/// Reads a time of day such as `18:30`, by the same rules.
std::optional<std::chrono::minutes> parse_time_of_day(std::string_view text);

/// ISO 8601 without the offset: `2026-12-02T11:00`.
std::string to_iso(LocalMinute local);

} // namespace thawslip::kitchen
