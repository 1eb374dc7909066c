#include "kitchen/date.h"

#include <doctest/doctest.h>

using namespace thawslip::kitchen;
using namespace std::chrono;

TEST_CASE("months are calendar months, and a day the month lacks becomes its last") {
    struct Case {
        Date from;
        int months;
        const char* expected;
    };
    const Case cases[] = {
        {2026y / 10 / 17, 3, "2027-01-17"},  {2026y / 8 / 31, 6, "2027-02-28"},
        {2026y / 11 / 30, 3, "2027-02-28"},  {2027y / 8 / 31, 6, "2028-02-29"},
        {2027y / 8 / 29, 6, "2028-02-29"},   {2026y / 8 / 29, 6, "2027-02-28"},
        {2028y / 2 / 29, 12, "2029-02-28"},  {2028y / 2 / 29, 48, "2032-02-29"},
        {2026y / 12 / 31, 2, "2027-02-28"},  {2026y / 1 / 31, 1, "2026-02-28"},
        {2026y / 3 / 31, 1, "2026-04-30"},   {2026y / 10 / 31, 0, "2026-10-31"},
        {2099y / 12 / 31, 14, "2101-02-28"}, {9999y / 12 / 31, 2, "10000-02-29"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.expected);
        CHECK(to_iso(add_months(c.from, months{c.months})) == c.expected);
    }
}

TEST_CASE("one month more never gives an earlier date") {
    for (auto day = sys_days{2026y / 1 / 1}; day < sys_days{2029y / 1 / 1}; day += days{1}) {
        for (int n = 0; n < 14; ++n) {
            REQUIRE(add_months(Date{day}, months{n}) < add_months(Date{day}, months{n + 1}));
            REQUIRE(add_months(Date{day}, months{n}) <= add_months(Date{day + days{1}}, months{n}));
        }
    }
}

TEST_CASE("days are counted across month ends and leap days") {
    CHECK(to_iso(add_days(2026y / 12 / 31, days{1})) == "2027-01-01");
    CHECK(to_iso(add_days(2028y / 2 / 28, days{1})) == "2028-02-29");
    CHECK(days_between(2028y / 2 / 28, 2028y / 3 / 1) == days{2});
    CHECK(days_between(2027y / 3 / 1, 2027y / 2 / 28) == days{-1});
}

TEST_CASE("a date is read back as it is written, and nothing else is one") {
    for (const char* text : {"2026-10-17", "2028-02-29", "0001-01-01", "9999-12-31"}) {
        CAPTURE(text);
        const auto date = parse_iso(text);
        REQUIRE(date.has_value());
        CHECK(to_iso(*date) == text);
    }
    for (const char* text : {"", "2026-10-7", "2026-13-01", "2027-02-29", "2026-10-17 ",
                             "17-10-2026", "2026/10/17", "-026-10-17", "+026-10-17"}) {
        CAPTURE(text);
        CHECK_FALSE(parse_iso(text).has_value());
    }
}
