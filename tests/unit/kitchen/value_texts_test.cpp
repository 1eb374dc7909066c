#include "kitchen/temperature.h"
#include "kitchen/time_range.h"
#include "kitchen/when.h"

#include <doctest/doctest.h>

using namespace thawslip::kitchen;
using std::chrono::minutes;

TEST_CASE("times are read in hours and minutes") {
    struct Case {
        const char* text;
        int low, high;
    };
    const Case cases[] = {{"45 min", 45, 45},        {"7-9 h", 420, 540},
                          {"7–9 h", 420, 540},       {"1 h 30 min", 90, 90},
                          {"1½ h", 90, 90},          {"3-3 1/2 h", 180, 210},
                          {"90-120 min", 90, 120},   {"2 hours", 120, 120},
                          {"20 minutes", 20, 20},    {"0.5 h", 30, 30},
                          {"72 h", 4320, 4320},      {"45 min - 1 h", 45, 60},
                          {"45 min to 1 h", 45, 60}, {"1 h 30 min – 2 h", 90, 120},
                          {"7-9 H", 420, 540},       {"20 Min", 20, 20},
                          {"1-1/2 h", 90, 90},       {"1 to 2 hours", 60, 120}};
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto time = parse_time_range(c.text);
        REQUIRE(time.ok());
        CHECK(time.value() == TimeRange{minutes{c.low}, minutes{c.high}});
    }
}

TEST_CASE("a time without a unit, of nothing or without end is refused") {
    for (const char* text :
         {"", "soon", "7", "7-9", "0 min", "73 h", "9-7 h", "5 weeks", "h", "99999999 h", "-3 h",
          "1 h - 2 h - 3 h", "1-2 h - 3 h", "1 h -", "2 h - 1 h", "1/0 h", "1,000 min"}) {
        CAPTURE(text);
        CHECK_FALSE(parse_time_range(text).ok());
    }
}

TEST_CASE("temperatures keep the scale they were written in") {
    const auto celsius = parse_temperature("74 °C");
    REQUIRE(celsius.ok());
    CHECK(celsius.value().celsius == doctest::Approx(74.0));
    const auto fahrenheit = parse_temperature("165F");
    REQUIRE(fahrenheit.ok());
    CHECK(fahrenheit.value().written_in == TemperatureScale::Fahrenheit);
    // FoodSafety.gov, Safe Minimum Internal Temperatures: 165 °F is printed as 73.9 °C.
    CHECK(fahrenheit.value().celsius == doctest::Approx(73.9).epsilon(0.001));
    for (const char* text : {"74 C", "74°c", "74 ºC", "74 ℃", "74 degrees Celsius", "74.0 deg C"}) {
        CAPTURE(text);
        REQUIRE(parse_temperature(text).ok());
        CHECK(parse_temperature(text).value() == celsius.value());
    }
    CHECK(parse_temperature("165 degrees Fahrenheit").value() == fahrenheit.value());
    for (const char* text :
         {"", "hot", "74", "74 K", "-5 °C", "400 °C", "74 °C now", "74 °", "74-80 °C", "74 cold"}) {
        CAPTURE(text);
        CHECK_FALSE(parse_temperature(text).ok());
    }
}

TEST_CASE("when something goes in is read in its five forms") {
    using Anchor = When::Anchor;
    struct Case {
        const char* text;
        When when;
    };
    const Case cases[] = {{"at the start", {Anchor::AtStart, minutes{0}}},
                          {"After 4 h", {Anchor::AfterStart, minutes{240}}},
                          {"halfway", {Anchor::Halfway, minutes{0}}},
                          {"last 10 min", {Anchor::BeforeEnd, minutes{10}}},
                          {"for the last 1½ h", {Anchor::BeforeEnd, minutes{90}}},
                          {"AT SERVING", {Anchor::AtServing, minutes{0}}},
                          {"from  the start ", {Anchor::AtStart, minutes{0}}},
                          {"in the last 10 min", {Anchor::BeforeEnd, minutes{10}}},
                          {"10 min before the end", {Anchor::BeforeEnd, minutes{10}}}};
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto when = parse_when(c.text);
        REQUIRE(when.ok());
        CHECK(when.value() == c.when);
    }
    for (const auto& form : when_forms()) {
        CAPTURE(form);
        CHECK(parse_when(form).ok());
    }
    for (const char* text :
         {"", "later", "last", "after 2-3 h", "last 10", "at the end", " before the end"}) {
        CAPTURE(text);
        CHECK_FALSE(parse_when(text).ok());
    }
}
