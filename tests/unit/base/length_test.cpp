#include "base/geometry.h"
#include "base/length_text.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip;
using namespace thawslip::literals;

TEST_CASE("an inch is 25.4 mm and 72 points") {
    // International yard and pound agreement, 1959: 1 in = 25.4 mm. PDF point: ISO 32000-1, 8.3.2.3
    // (clause from memory): 1/72 in.
    CHECK(Length::inches(1).in_millimetres() == doctest::Approx(25.4));
    CHECK(Length::inches(1).in_points() == doctest::Approx(72.0));
    CHECK(Length::millimetres(210).in_points() == doctest::Approx(595.2756).epsilon(1e-6));
}

TEST_CASE("a rectangle knows what lies inside it and what overlaps it") {
    const Rect cell{{10_mm, 10_mm}, {50_mm, 30_mm}};
    CHECK(cell.contains(cell));
    CHECK(cell.contains(cell.inset(2_mm)));
    CHECK_FALSE(cell.inset(2_mm).contains(cell));
    const Rect neighbour{{60_mm, 10_mm}, {50_mm, 30_mm}};
    CHECK_FALSE(cell.overlaps(neighbour)); // they share an edge only
    CHECK(cell.overlaps({{59_mm, 10_mm}, {5_mm, 5_mm}}));
}

TEST_CASE("a length that is read is the length that is reckoned with, to the last bit") {
    for (int n = 1; n <= 1000; ++n) {
        CAPTURE(n);
        CHECK(parse_length(std::to_string(n) + " mm").value() == Length::millimetres(n));
        CHECK(parse_length(std::to_string(n) + " in").ok() == (n <= 393)); // up to 10 m
        CHECK(parse_length(std::to_string(n) + " pt").value() == Length::points(n));
    }
    CHECK(parse_length("30 cm").value() == Length::millimetres(300));
    CHECK(parse_length("0.3 m").value() == Length::millimetres(300));
}
