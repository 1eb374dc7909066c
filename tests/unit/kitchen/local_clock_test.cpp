#include "kitchen/timeline/local_clock.h"

#include <doctest/doctest.h>

namespace local_clock_test {

using namespace thawslip::kitchen;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace {

/// Central Europe: an hour ahead of UTC, two in summer.
const LocalClock orchard{60min,
                         {{sys_days{2026y / March / 29} + 1h, 120min},
                          {sys_days{2026y / October / 25} + 1h, 60min},
                          {sys_days{2027y / March / 28} + 1h, 120min}}};

LocalMinute at(year_month_day date, minutes time) {
    return local_days{date} + time;
}

Instant utc(year_month_day date, minutes time) {
    return sys_days{date} + time;
}

struct Case {
    const char* name;
    LocalMinute local;
    Instant instant;
    Shown shown;
};

const Case cases[] = {
    {"in winter", at(2026y / December / 3, 18h + 30min), utc(2026y / December / 3, 17h + 30min),
     Shown::Once},
    {"in summer", at(2026y / July / 1, 12h), utc(2026y / July / 1, 10h), Shown::Once},
    {"a minute before spring", at(2026y / March / 29, 119min), utc(2026y / March / 29, 59min),
     Shown::Once},
    {"in the skipped hour", at(2026y / March / 29, 2h + 30min), utc(2026y / March / 29, 1h + 30min),
     Shown::Never},
    {"right after spring", at(2026y / March / 29, 3h), utc(2026y / March / 29, 1h), Shown::Once},
    {"in the hour that comes twice", at(2026y / October / 25, 2h + 30min),
     utc(2026y / October / 25, 30min), Shown::Twice},
    {"right after autumn", at(2026y / October / 25, 3h), utc(2026y / October / 25, 2h),
     Shown::Once},
    {"the leap day", at(2028y / February / 29, 23h + 59min),
     utc(2028y / February / 29, 21h + 59min), Shown::Once},
};

} // namespace

TEST_CASE("a clock's time is read as the point in time it means") {
    for (const auto& c : cases) {
        CAPTURE(c.name);
        const auto reading = read_clock(orchard, c.local);
        CHECK(reading.instant == c.instant);
        CHECK(reading.shown == c.shown);
    }
}

TEST_CASE("every point in time survives the way to the clock and back, or comes again") {
    for (Instant when = sys_days{2026y / October / 24}; when < sys_days{2026y / October / 27};
         when += 7min) {
        const auto back = read_clock(orchard, on_clock(orchard, when));
        CHECK(back.shown != Shown::Never);
        CHECK((back.instant == when || (back.shown == Shown::Twice && back.instant + 1h == when)));
    }
}

TEST_CASE("a local time is read to the minute, and nothing else passes for one") {
    CHECK(parse_local_minute("2026-12-03 18:30") ==
          LocalMinute{local_days{2026y / December / 3} + 18h + 30min});
    CHECK(parse_local_minute("2028-02-29T00:00") == LocalMinute{local_days{2028y / February / 29}});
    for (const char* wrong : {"", "2026-12-03", "2026-02-29 12:00", "2026-13-01 12:00",
                              "2026-12-03 24:00", "2026-12-03 18:60", "2026-12-03 18:30:00",
                              " 2026-12-03 18:30", "1989-12-03 18:30", "2026-1a-03 18:30"}) {
        CAPTURE(wrong);
        CHECK_FALSE(parse_local_minute(wrong).has_value());
    }
}

} // namespace local_clock_test
