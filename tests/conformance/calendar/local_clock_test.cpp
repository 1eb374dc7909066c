// Our clock arithmetic against the C library's, for zones written as POSIX rules (IEEE Std 1003.1,
// 8.3, TZ), which need no zone files.

#include "kitchen/timeline/local_clock.h"
#include "support/variable.h"

#include <ctime>
#include <doctest/doctest.h>

using namespace thawslip::kitchen;
using thawslip::test_support::Variable;
using namespace std::chrono;
using namespace std::chrono_literals;

namespace {

minutes system_offset(Instant when) {
    const auto since = duration_cast<seconds>(when.time_since_epoch()).count();
    const time_t time = static_cast<time_t>(since);
    std::tm local{};
    tzset(); // localtime_r need not look at TZ again
    localtime_r(&time, &local);
    return minutes{local.tm_gmtoff / 60};
}

/// The changes of the system's clock between two points in time, found hour by hour and then to
/// the minute: what a program does that hands a LocalClock on.
LocalClock system_clock_between(Instant first, Instant last) {
    LocalClock clock{system_offset(first), {}};
    for (Instant hour = first; hour < last; hour += 1h) {
        if (system_offset(hour) == system_offset(hour + 1h))
            continue;
        Instant change = hour;
        while (system_offset(change) == system_offset(hour))
            change += 1min;
        clock.changes.push_back({change, system_offset(change)});
    }
    return clock;
}

struct Case {
    const char* rule;
    int changes;
};

const Case zones[] = {
    {"UTC0", 0},
    {"CET-1CEST,M3.5.0,M10.5.0/3", 2},       // central Europe
    {"EST5EDT,M3.2.0,M11.1.0", 2},           // eastern North America
    {"LHST-10:30LHDT-11,M10.1.0,M4.1.0", 2}, // Lord Howe: half an hour, southern summer
    {"<+0545>-5:45", 0},                     // Nepal
    {"IST-1GMT0,M10.5.0,M3.5.0/1", 2},       // Ireland: winter is the exception
};

} // namespace

TEST_CASE("the kitchen clock shows what the system's clock shows, all year round") {
    const Instant first = sys_days{2026y / January / 1};
    const Instant last = sys_days{2027y / January / 1};
    for (const auto& zone : zones) {
        CAPTURE(zone.rule);
        const Variable set{"TZ", zone.rule};
        const auto clock = system_clock_between(first, last);
        CHECK(clock.changes.size() == static_cast<std::size_t>(zone.changes));
        int wrong = 0;
        for (Instant when = first; when < last; when += 17min)
            wrong += offset_at(clock, when) == system_offset(when) ? 0 : 1;
        CHECK(wrong == 0);
    }
}

TEST_CASE("what the clock shows is read as the system's mktime reads it") {
    for (const auto& zone : zones) {
        CAPTURE(zone.rule);
        const Variable set{"TZ", zone.rule};
        const auto clock =
            system_clock_between(sys_days{2025y / December / 30}, sys_days{2027y / January / 3});
        int wrong = 0;
        for (LocalMinute shown = local_days{2026y / January / 1};
             shown < local_days{2027y / January / 1}; shown += 23min) {
            const auto reading = read_clock(clock, shown);
            if (reading.shown != Shown::Once)
                continue; // mktime leaves the choice to the library
            const auto day = floor<days>(shown);
            const year_month_day date{day};
            std::tm local{};
            local.tm_year = static_cast<int>(date.year()) - 1900;
            local.tm_mon = static_cast<int>(static_cast<unsigned>(date.month())) - 1;
            local.tm_mday = static_cast<int>(static_cast<unsigned>(date.day()));
            local.tm_min = static_cast<int>((shown - day).count());
            local.tm_isdst = -1;
            const auto seen = mktime(&local);
            wrong +=
                seen == duration_cast<seconds>(reading.instant.time_since_epoch()).count() ? 0 : 1;
        }
        CHECK(wrong == 0);
    }
}
