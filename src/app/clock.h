#pragma once

#include "kitchen/date.h"
#include "kitchen/timeline/local_clock.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace thawslip::app {

/// Where SOURCE_DATE_EPOCH holds seconds since 1970, these (see now_text).
std::optional<std::int64_t> fixed_clock();

/// Today where the program runs. Only app/ asks the clock.
kitchen::Date today();

/// Now, to the minute.
kitchen::Instant now();

/// The clock of the time zone the program runs in (TZ, else the system's) between two moments:
/// every change of its offset, found by asking the system (POSIX localtime_r).
kitchen::LocalClock system_clock(kitchen::Instant from, kitchen::Instant to);

/// Now, as the kitchen clock shows it: `2026-10-17T14:05:00`. Where SOURCE_DATE_EPOCH holds
/// seconds since 1970 (reproducible-builds.org, "SOURCE_DATE_EPOCH"), that moment in UTC stands
/// for now, here, in `now` and in `today`.
std::string now_text();

} // namespace thawslip::app
