#include "kitchen/measures/time_range.h"

#include <doctest/doctest.h>

using namespace thawslip::kitchen;
using std::chrono::minutes;

TEST_CASE("times are read in hours and minutes") {
    struct Case {
        const char* text;
        int low, high;
    };
    const Case cases[] = {
        {"45 min", 45, 45},           {"45min", 45, 45},       {"45 min.", 45, 45},
        {"45 Minutes", 45, 45},       {" 20 mins ", 20, 20},   {"1 minute", 1, 1},
        {"7-9 h", 420, 540},          {"7–9 h", 420, 540},     {"7 to 9 hours", 420, 540},
        {"2 HRS", 120, 120},          {"1 h 30 min", 90, 90},  {"1h30min", 90, 90},
        {"1 h 30-40 min", 90, 100},   {"1½ h", 90, 90},        {"1/3 h", 20, 20},
        {"3-3 1/2 h", 180, 210},      {"90-120 min", 90, 120}, {"45 min-1 h", 45, 60},
        {"45 min - 1 h", 45, 60},     {"1-1/2 h", 90, 90},     {"45 min to 1 h 15 min", 45, 75},
        {"1 h – 1 h 30 min", 60, 90}, {"0.5 h", 30, 30},       {"7\u00A0h", 420, 420},
        {"72 h", 4320, 4320},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto time = parse_time_range(c.text);
        REQUIRE(time.ok());
        CHECK(time.value() == TimeRange{minutes{c.low}, minutes{c.high}});
    }
}

TEST_CASE("what is no time is refused where it goes wrong") {
    struct Case {
        const char* text;
        std::size_t offset;
        const char* message;
    };
    const char* const no_time = "expected a time such as \"45 min\" or \"7-9 h\"";
    const char* const no_unit = "expected h or min after the number";
    const char* const range = "a time is above 0 and at most 72 h";
    const char* const whole = "expected a whole number of minutes";
    const Case cases[] = {
        {"", 0, no_time},
        {"overnight", 0, no_time},
        {"-3 h", 0, no_time},
        {"h", 0, no_time},
        {"7", 1, no_unit},
        {"7-9", 3, no_unit},
        {"5 weeks", 2, no_unit},
        {"5 hourly", 2, no_unit},
        {"1:30 h", 1, no_unit},
        {"1 h 30", 6, no_unit},
        {"0 min", 0, range},
        {"73 h", 0, range},
        {"71 h-72 h 1 min", 0, range},
        {"1.5 min", 0, whole},
        {"0.33 h", 0, whole},
        {"9-7 h", 0, "the shorter time comes first"},
        {"1 h-45 min", 0, "the shorter time comes first"},
        {"1 h 1 h", 4, "expected minutes after the hours"},
        {"30 min 1 h", 7, "expected nothing after the time"},
        {"45 min or so", 7 + 3, no_time},
        {"1-2 h to 3 h", 9, "expected one range, such as \"45 min-1 h\""},
        {"99999999 h", 0, "the number has more digits than a kitchen needs"},
        {"1/0 h", 1, "nothing can be divided by 0"},
        {"1,000 min", 1, "it may mean 1 or 1000: write one of them without a comma"},
        {"1 h -", 5, no_time},
        {"1 h - 2 h - 3 h", 10, "expected nothing after the time"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto time = parse_time_range(c.text);
        REQUIRE_FALSE(time.ok());
        CHECK(time.fault().offset == c.offset);
        CHECK(time.fault().message == c.message);
    }
}
