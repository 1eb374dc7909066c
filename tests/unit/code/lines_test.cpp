// Dates, times and temperatures as the lines of a code have them: read back as they are written,
// and nothing else.

#include "code/lines.h"
#include "code/message.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::code;
using namespace std::chrono_literals;

TEST_CASE("a date is read back as it is written, and no day that there is not") {
    for (auto day = std::chrono::sys_days{std::chrono::year{2026} / 1 / 1};
         day < std::chrono::sys_days{std::chrono::year{2029} / 1 / 1};
         day += std::chrono::days{1}) {
        const kitchen::Date date{day};
        CHECK(date_of(date_text(date)) == date);
    }
    CHECK(date_text(std::chrono::year{2026} / 10 / 7) == "7 OCT 2026");
    for (const char* text :
         {"", "17", "17 OCT", "17 OCT ", "17 OKT 2026", "17 oct 2026", "0 OCT 2026", "32 OCT 2026",
          "31 NOV 2026", "29 FEB 2026", "117 OCT 2026", "17 OCT 10000", "-7 OCT 2026", "17 OCT2026",
          "17 OCT 2026 ", "x OCT 2026"}) {
        CAPTURE(text);
        CHECK_FALSE(date_of(text).has_value());
    }
}

TEST_CASE("times are read back as they are written, up to their bound") {
    for (const auto& time : {kitchen::TimeRange{0min, 0min}, kitchen::TimeRange{45min, 45min},
                             kitchen::TimeRange{7h, 9h}, kitchen::TimeRange{90min, 100min},
                             kitchen::TimeRange{24h * 30, 24h * 30}}) {
        CHECK(time_of(time_text(time)) == time);
    }
    CHECK(time_of("7 TO 9 H") == kitchen::TimeRange{7h, 9h}); // as people say it
    CHECK(time_of("99999 MIN") == kitchen::TimeRange{99999min, 99999min});
    CHECK(time_of("1-99999 MIN") == kitchen::TimeRange{1min, 99999min});
    for (const char* text : {"", "7", "H", "7 D", "7- H", "-9 H", "7-9", "100000 MIN",
                             "1-100000 MIN", "7-8-9 H", "7 TO H", "1.5 H", "1234567890 MIN"}) {
        CAPTURE(text);
        CHECK_FALSE(time_of(text).has_value());
    }
    CHECK(duration_of("90 MIN") == 90min);
    CHECK_FALSE(duration_of("80-90 MIN").has_value());
}

TEST_CASE("temperatures are read back as they are written, in tenths") {
    using enum kitchen::TemperatureScale;
    for (const auto& target : {Target{740, Celsius}, Target{739, Celsius}, Target{1650, Fahrenheit},
                               Target{-180, Celsius}, Target{-5, Celsius}, Target{0, Celsius}}) {
        CHECK(target_of(target_text(target)) == target);
    }
    CHECK(target_of("9999.9 C")->tenths == 99999);
    for (const char* text :
         {"", "C", " C", "74", "74 K", "74.95 C", "74. C", "10000 C", "--7 C", "7,4 C", "74C"}) {
        CAPTURE(text);
        CHECK_FALSE(target_of(text).has_value());
    }
}
