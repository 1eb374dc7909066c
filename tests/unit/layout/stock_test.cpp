#include "layout/sheets/stock.h"
#include "unit/layout/stocks.h"

#include <cmath>
#include <doctest/doctest.h>
#include <functional>
#include <limits>

namespace thawslip::layout {

TEST_CASE("cells are counted along rows from the top left") {
    const Stock stock = ten_labels();
    CHECK(stock.cells() == 10);
    CHECK(stock.cell_at(0).origin == stock.first);
    CHECK(stock.cell_at(1).left().in_inches() == doctest::Approx(4.34375));
    CHECK(stock.cell_at(1).top().in_inches() == doctest::Approx(0.5));
    CHECK(stock.cell_at(2).left().in_inches() == doctest::Approx(0.15625));
    CHECK(stock.cell_at(2).top().in_inches() == doctest::Approx(2.5));
    CHECK(stock.cell_at(9).bottom().in_inches() == doctest::Approx(10.5));
}

TEST_CASE("every point of the safe area is a safe margin away from the rounded edge") {
    Stock stock = ten_labels();
    for (const double radius_mm : {0.0, 1.0, 2.0, 3.0, 8.0, 25.4}) {
        CAPTURE(radius_mm);
        stock.corner_radius = Length::millimetres(radius_mm);
        const Rect cell = stock.cell_at(0);
        const Rect safe = stock.safe_at(0);
        const double inset = (safe.left() - cell.left()).in_millimetres();
        CHECK(inset >= 2.0 - 1e-9);
        if (inset < radius_mm) {
            const double corner_from_arc_centre = std::hypot(radius_mm - inset, radius_mm - inset);
            CHECK(corner_from_arc_centre == doctest::Approx(radius_mm - 2.0));
        }
    }
}

TEST_CASE("a stock that adds up has no faults") {
    CHECK(check_geometry(ten_labels()).empty());
    CHECK(check_geometry(cut_from_a4(2, 5, {90_mm, 50_mm})).empty());
}

namespace {

struct Impossible {
    const char* name;
    std::function<void(Stock&)> spoil;
    const char* key;
    const char* message;
};

} // namespace

TEST_CASE("impossible geometry is refused with its arithmetic") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const Impossible cases[] = {
        {"too many columns",
         [](Stock& s) {
             s.columns = 4;
             s.cell.width = 60_mm;
             s.pitch.width = 62_mm;
             s.first.x = 10_mm;
         },
         "columns",
         "4 columns x 60 mm + 3 gutters x 2 mm + 10 mm = 256 mm, but the paper is 210 mm wide"},
        {"one column too wide",
         [](Stock& s) {
             s.columns = 1;
             s.cell.width = 205_mm;
             s.first.x = 10_mm;
         },
         "cell", "1 column x 205 mm + 10 mm = 215 mm, but the paper is 210 mm wide"},
        {"rows off the foot", [](Stock& s) { s.rows = 6; }, "rows",
         "6 rows x 50 mm + 23.5 mm = 323.5 mm, but the paper is 297 mm high"},
        {"overlapping columns", [](Stock& s) { s.pitch.width = 80_mm; }, "pitch",
         "the columns overlap: a cell is 90 mm wide, but the next one starts after 80 mm, so 10 mm "
         "would be printed twice"},
        {"before the edge", [](Stock& s) { s.first.x = -3_mm; }, "first",
         "the first column starts -3 mm from the paper's left edge, expected 0 or more"},
        {"safe margin eats the cell", [](Stock& s) { s.safe_margin = 25_mm; }, "safe_margin",
         "2 safe margins x 25 mm = 50 mm, which leaves nothing of a cell that is 50 mm high"},
        {"negative safe margin", [](Stock& s) { s.safe_margin = -1_mm; }, "safe_margin",
         "the safe margin is -1 mm, expected 0 or more"},
        {"radius over half", [](Stock& s) { s.corner_radius = 26_mm; }, "corner_radius",
         "the corner radius is 26 mm, expected 0 to 25 mm: half of the cell, which is 50 mm high"},
        {"no columns", [](Stock& s) { s.columns = 0; }, "columns",
         "0 columns, expected at least 1"},
        {"negative rows", [](Stock& s) { s.rows = -5; }, "rows", "-5 rows, expected at least 1"},
        {"too many cells",
         [](Stock& s) {
             s.columns = 100000;
             s.rows = 100000;
         },
         "columns",
         "100000 columns x 100000 rows = 10000000000 cells, expected at most 1000 a "
         "sheet"},
        {"a cell under 10 mm", [](Stock& s) { s.cell.height = 9_mm; }, "cell",
         "a cell is 9 mm high, expected 10 mm to 5080 mm"},
        {"no cell at all", [](Stock& s) { s.cell.width = Length{}; }, "cell",
         "a cell is 0 mm wide, expected 10 mm to 5080 mm"},
        {"paper as large as a field", [](Stock& s) { s.sheet.height = 6000_mm; }, "sheet",
         "the paper is 6000 mm high, expected 10 mm to 5080 mm"},
        {"no number", [nan](Stock& s) { s.pitch.width = Length::points(nan); }, "pitch",
         "the columns overlap: a cell is 90 mm wide, but the next one starts after nan mm, so nan "
         "mm would be printed twice"},
        {"a roll cut by hand",
         [](Stock& s) {
             s.columns = s.rows = 1;
             s.first = {};
             s.sheet = s.cell;
             s.roll = true;
         },
         "cut", "a roll is not cut by hand from a sheet"},
        {"a roll of ten",
         [](Stock& s) {
             s.roll = true;
             s.cut = false;
         },
         "roll", "on a roll the page is the label: one cell, as large as the page"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.name);
        Stock stock = cut_from_a4(2, 5, {90_mm, 50_mm});
        c.spoil(stock);
        const auto faults = check_geometry(stock);
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].severity == Severity::Error);
        CHECK(faults[0].key.text() == c.key);
        CHECK(faults[0].message == c.message);
    }
}

TEST_CASE("the labels of a roll are not cut apart into halves") {
    Stock stock;
    stock.sheet = stock.cell = stock.pitch = {50_mm, 80_mm};
    stock.columns = stock.rows = 1;
    stock.roll = stock.halves = true;
    const auto faults = check_geometry(stock);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].key.text() == "halves");
    CHECK(faults[0].message == "the labels of a roll are not cut apart");
}

TEST_CASE("the arithmetic is in inches where the paper is") {
    Stock stock = ten_labels();
    stock.columns = 3;
    const auto faults = check_geometry(stock);
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].message == "3 columns x 4 in + 2 gutters x 3/16 in + 5/32 in = 12 17/32 in, "
                               "but the paper is 8 1/2 in wide");
}

TEST_CASE("all faults of a geometry are found together") {
    Stock stock = cut_from_a4(2, 5, {90_mm, 50_mm});
    stock.pitch.width = 80_mm;
    stock.rows = 9;
    stock.corner_radius = 40_mm;
    stock.safe_margin = 30_mm;
    CHECK(check_geometry(stock).size() == 4);
}

} // namespace thawslip::layout
