#include "layout/sheets/ruler_text.h"
#include "unit/layout/stocks.h"

#include <doctest/doctest.h>

namespace thawslip::layout {

TEST_CASE("a length reads as on a ruler") {
    struct Case {
        Length length;
        Unit unit;
        const char* words;
    };
    const Case cases[] = {
        {210_mm, Unit::Millimetre, "210 mm"},
        {67.5_mm, Unit::Millimetre, "67.5 mm"},
        {4_in, Unit::Millimetre, "101.6 mm"},
        {10_mm / 3, Unit::Millimetre, "3.33 mm"},
        {-0.001_mm, Unit::Millimetre, "0 mm"},
        {-2.5_mm, Unit::Millimetre, "-2.5 mm"},
        {4_in, Unit::Inch, "4 in"},
        {4.1875_in, Unit::Inch, "4 3/16 in"},
        {0.15625_in, Unit::Inch, "5/32 in"},
        {-0.5_in, Unit::Inch, "-1/2 in"},
        {-1.5_in, Unit::Inch, "-1 1/2 in"},
        {240_pt, Unit::Inch, "3 1/3 in"},
        {60_pt, Unit::Inch, "5/6 in"},
        {2_mm, Unit::Inch, "0.0787 in"},
        {1_in / 192, Unit::Inch, "0.0052 in"},
        {1_in / 64, Unit::Inch, "1/64 in"},
        {Length{}, Unit::Inch, "0 in"},
    };
    for (const auto& c : cases) {
        CHECK(ruler_text(c.length, c.unit) == c.words);
    }
    CHECK(ruler_text(Size{2.625_in, 1_in}, Unit::Inch) == "2 5/8 x 1 in");
}

TEST_CASE("sizes that are round in inches are told in inches, all others in millimetres") {
    CHECK(unit_of(Size{8.5_in, 11_in}) == Unit::Inch);
    CHECK(unit_of(Size{5_in, 3_in}) == Unit::Inch);
    CHECK(unit_of(Size{210_mm, 297_mm}) == Unit::Millimetre);
    CHECK(unit_of(Size{148.5_mm, 105_mm}) == Unit::Millimetre);
    CHECK(unit_of(Size{33.33_mm, 20.01_mm}) == Unit::Millimetre);
    CHECK(unit_of(ten_labels()) == Unit::Inch);
}

} // namespace thawslip::layout
