// What the program takes for now: reproducible-builds.org, "SOURCE_DATE_EPOCH Specification", 1.1
// (seconds since 1970, UTC). The same moment by GNU date: date -u -d @1792245906 +%FT%T.

#include "app/clock.h"
#include "app/station.h"
#include "support/variable.h"

#include <chrono>
#include <doctest/doctest.h>
#include <regex>

namespace clock_test {

using namespace thawslip;
using namespace thawslip::test_support;
using namespace std::chrono;

TEST_CASE("a moment that is set stands for now, whatever the time zone") {
    const Variable fixed{"SOURCE_DATE_EPOCH", "1792245906"};
    const Variable zone{"TZ", "AEST-10"};
    CHECK(app::now_text() == "2026-10-17T14:05:06");
    CHECK(app::today() == year{2026} / 10 / 17);
    CHECK(app::now().time_since_epoch() == seconds{1792245900});
    CHECK(app::fixed_clock() == 1792245906);
    const auto station = app::station_now();
    CHECK(station.clock == 1792245906);
    CHECK(station.boot.empty()); // nothing of this machine's own but its name
}

TEST_CASE("what is no moment sets none: it is now") {
    const Variable fixed{"SOURCE_DATE_EPOCH", "17 Oct"};
    CHECK_FALSE(app::fixed_clock());
    const auto before = floor<minutes>(system_clock::now());
    const auto now = app::now();
    CHECK(now >= before);
    CHECK(now <= system_clock::now());
    const auto station = app::station_now();
    CHECK(station.clock >= duration_cast<seconds>(before.time_since_epoch()).count());
    CHECK_FALSE(station.boot.empty());
    CHECK(station.uptime > 0);
    CHECK(
        std::regex_match(app::now_text(), std::regex{"\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d"}));
}

TEST_CASE("a station is called by a hash: 16 digits, the same at every time, and no id of the "
          "machine's") {
    const auto name = app::station_now().name;
    CHECK(std::regex_match(name, std::regex{"[0-9a-f]{16}"}));
    CHECK(app::station_now().name == name);
}

} // namespace clock_test
