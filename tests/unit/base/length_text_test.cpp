#include "base/length_text.h"

#include <doctest/doctest.h>

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
