#include "archive/events.h"
#include "support/random.h"

#include <ctime>
#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace thawslip;

TEST_CASE("a written moment is so many seconds since 1970 as timegm(3) counts") {
    test_support::Random random{1970};
    const auto from = [&random](int low, int high) {
        return low + static_cast<int>(random.below(static_cast<std::size_t>(high - low + 1)));
    };
    for (int i = 0; i < 500; ++i) {
        std::tm time{};
        time.tm_year = from(70, 200); // since 1900
        time.tm_mon = from(0, 11);
        time.tm_mday = from(1, 28);
        time.tm_hour = from(0, 23);
        time.tm_min = from(0, 59);
        time.tm_sec = from(0, 59);
        const auto at =
            fmt::format("{:04}-{:02}-{:02}T{:02}:{:02}:{:02}", time.tm_year + 1900, time.tm_mon + 1,
                        time.tm_mday, time.tm_hour, time.tm_min, time.tm_sec);
        CAPTURE(at);
        CHECK(archive::seconds_of(at) == ::timegm(&time));
    }
    for (const char* none :
         {"", "yesterday", "2026-10-17", "2026-13-01T00:00:00", "2026-10-17T1:00:00"}) {
        CAPTURE(none);
        CHECK(archive::seconds_of(none) == 0);
    }
}
