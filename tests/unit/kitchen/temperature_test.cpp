#include "kitchen/measures/temperature.h"
#include "kitchen/measures/temperature_text.h"

#include <doctest/doctest.h>

using namespace thawslip::kitchen;

TEST_CASE("temperatures keep the scale they were written in") {
    struct Case {
        const char* text;
        double celsius;
        TemperatureScale scale;
    };
    constexpr auto c = TemperatureScale::Celsius;
    constexpr auto f = TemperatureScale::Fahrenheit;
    const Case cases[] = {
        {"74 °C", 74.0, c},
        {"74°C", 74.0, c},
        {"74 ° C", 74.0, c},
        {"74 C", 74.0, c},
        {"74c", 74.0, c},
        {"74 ℃", 74.0, c},
        {"74 º C", 74.0, c},
        {"74 ˚C", 74.0, c},
        {"73.5 °C", 73.5, c},
        {"73,5 °C", 73.5, c},
        {"74\u00A0°C", 74.0, c},
        {"212 °F", 100.0, f},
        {"32 ℉", 0.0, f},
        {" 165F ", 73.8889, f},
        {"0 °C", 0.0, c},
        {"300 °C", 300.0, c},
        {"74 degrees Celsius", 74.0, c},
        {"74.0 deg C", 74.0, c},
        {"212 degrees Fahrenheit", 100.0, f},
    };
    for (const auto& each : cases) {
        CAPTURE(each.text);
        const auto temperature = parse_temperature(each.text);
        REQUIRE(temperature.ok());
        CHECK(temperature.value().celsius == doctest::Approx(each.celsius).epsilon(1e-5));
        CHECK(temperature.value().written_in == each.scale);
    }
}

TEST_CASE("a setting below boiling is turned to the degree, and never comes out colder") {
    const auto turned = [](const char* text) {
        return to_text(parse_temperature(text).value(), TemperatureUse::Oven, {});
    };
    CHECK(turned("58 °C") == "58 °C (137 °F)"); // 136.4 °F
    CHECK(turned("54 °C") == "54 °C (130 °F)"); // 129.2 °F
    CHECK(turned("75 °C") == "75 °C (167 °F)");
    CHECK(turned("130 °F") == "130 °F (55 °C)"); // 54.4 °C
    CHECK(turned("99 °C") == "99 °C (211 °F)");
    CHECK(turned("100 °C") == "100 °C (210 °F)"); // from there on what a dial has
    CHECK(turned("120 °C") == "120 °C (250 °F)");
    CHECK(turned("240 °F") == "240 °F (115 °C)");
    CHECK(turned("300 °C") == "300 °C (575 °F)"); // and as far as anybody writes
    CHECK(turned("180 °C") == "180 °C (350 °F)");
    CHECK(turned("350 °F") == "350 °F (180 °C)");
}

TEST_CASE("the safe minimums agree in both scales to a tenth of a degree") {
    // FoodSafety.gov, Cook to a Safe Minimum Internal Temperature: 145, 160 and 165 °F; USDA FSIS,
    // Safe Minimum Internal Temperature Chart, has 62.8, 71.1 and 73.9 °C beside them.
    const std::pair<const char*, double> minimums[] = {
        {"145 °F", 62.8}, {"160 °F", 71.1}, {"165 °F", 73.9}};
    for (const auto& [text, celsius] : minimums) {
        CAPTURE(text);
        CHECK(std::abs(parse_temperature(text).value().celsius - celsius) < 0.05);
    }
}

TEST_CASE("what is no temperature is refused where it goes wrong") {
    struct Case {
        const char* text;
        std::size_t offset;
        const char* message;
    };
    const char* const no_number = "expected a temperature such as \"74 °C\"";
    const char* const no_scale = "expected °C or °F after the number";
    const char* const range = "expected a temperature from 0 to 300 °C";
    const Case cases[] = {
        {"", 0, no_number},         {"hot", 0, no_number},
        {"-5 °C", 0, no_number},    {"74", 2, no_scale},
        {"74 °", 3, no_scale},      {"74 K", 3, no_scale},
        {"74 cold", 3, no_scale},   {"74-80 °C", 2, no_scale},
        {"74 °C now", 3, no_scale}, {"74 °CF", 3, no_scale},
        {"300.1 °C", 0, range},     {"31 °F", 0, range},
        {"  400 °C", 2, range},     {"1/0 °C", 1, "nothing can be divided by 0"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto temperature = parse_temperature(c.text);
        REQUIRE_FALSE(temperature.ok());
        CHECK(temperature.fault().offset == c.offset);
        CHECK(temperature.fault().message == c.message);
    }
}
