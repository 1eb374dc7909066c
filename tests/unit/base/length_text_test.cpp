#include "base/length_text.h"

#include <doctest/doctest.h>
#include <string>
#include <utility>

using namespace thawslip;

TEST_CASE("lengths are read with their unit, and never without") {
    struct Case {
        const char* text;
        double millimetres;
    };
    const Case cases[] = {{"100 mm", 100}, {"4 in", 101.6},     {"2 5/8 in", 66.675},
                          {"1.5 cm", 15},  {"12 pt", 4.233333}, {"-0.5 mm", -0.5},
                          {"1,5 cm", 15},  {"0 mm", 0}};
    for (const auto& c : cases) {
        CAPTURE(c.text);
        const auto length = parse_length(c.text);
        REQUIRE(length.ok());
        CHECK(length.value().in_millimetres() == doctest::Approx(c.millimetres).epsilon(1e-6));
    }
    for (const char* text :
         {"", "4", "mm", "4 parsec", "nan mm", "inf mm", "1e9 mm", "4 in in", "99999999999 mm"}) {
        CAPTURE(text);
        CHECK_FALSE(parse_length(text).ok());
    }
}

TEST_CASE("every unit is so many points, whole and in fractions") {
    // 1 in = 25.4 mm (international yard and pound agreement, 1959) = 72 pt (ISO 32000-1).
    const std::pair<const char*, double> units[] = {
        {"mm", 72 / 25.4}, {"cm", 720 / 25.4}, {"m", 72000 / 25.4}, {"in", 72.0},   {"inch", 72.0},
        {"inches", 72.0},  {"\"", 72.0},       {"pt", 1.0},         {"points", 1.0}};
    for (const auto& [unit, points] : units) {
        for (const auto& [number, value] : {std::pair{"1", 1.0}, std::pair{"2.5", 2.5},
                                            std::pair{"3/4", 0.75}, std::pair{"1 1/2", 1.5}}) {
            const auto text = std::string{number} + " " + unit;
            CAPTURE(text);
            const auto length = parse_length(text);
            REQUIRE(length.ok());
            CHECK(length.value().in_points() == doctest::Approx(value * points).epsilon(1e-12));
        }
        const auto by_nothing = parse_length("1/0 " + std::string{unit});
        REQUIRE_FALSE(by_nothing.ok());
        CHECK(by_nothing.fault().message.find("over 10 m") == std::string::npos);
    }
}
