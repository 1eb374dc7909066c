#include "layout/print_size.h"
#include "layout/sheets/crop_marks.h"
#include "unit/layout/stocks.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

/// Four cards of 100 x 140 mm, which may be cut in halves.
Stock quarters() {
    Stock stock;
    stock.sheet = {210_mm, 297_mm};
    stock.cell = stock.pitch = {100_mm, 140_mm};
    stock.columns = stock.rows = 2;
    stock.safe_margin = 6_mm;
    stock.cut = stock.halves = true;
    return stock;
}

} // namespace

TEST_CASE("finishing cards take half a cell, across its longer side, and others all of it") {
    auto stock = quarters();
    CHECK(cell_of(wording::Kind::CookDayCard, stock) == Size{100_mm, 140_mm});
    CHECK(cell_of(wording::Kind::FinishingCard, stock) == Size{100_mm, 70_mm});
    CHECK(room_of(wording::Kind::FinishingCard, stock) == Size{88_mm, 58_mm});
    CHECK(stock.part_at(0, Part::SecondHalf) == Rect{{0_mm, 70_mm}, {100_mm, 70_mm}});
    stock.cell = stock.pitch = {140_mm, 100_mm};
    CHECK(cell_of(wording::Kind::FinishingCard, stock) == Size{70_mm, 100_mm});
    stock.halves = false;
    CHECK(cell_of(wording::Kind::FinishingCard, stock) == Size{140_mm, 100_mm});
}

TEST_CASE("a half that is left over is taken by the next small print of the same sheet") {
    using enum PrintSize;
    const auto places =
        impose(quarters(), std::vector{Cell, HalfCell, Cell, HalfCell, HalfCell, Cell, HalfCell});
    CHECK(places == std::vector<Place>{{0, 0, Part::Whole},
                                       {0, 1, Part::FirstHalf},
                                       {0, 2, Part::Whole},
                                       {0, 1, Part::SecondHalf},
                                       {0, 3, Part::FirstHalf},
                                       {1, 0, Part::Whole},
                                       {1, 1, Part::FirstHalf}}); // sheets stay in order
}

TEST_CASE("a cell that is cut in halves has a mark at each end of the cut, and others none") {
    auto stock = quarters();
    const auto marks = half_marks(stock, 3);
    REQUIRE(marks.size() == 2);
    for (const auto& mark : marks) {
        CHECK(mark.area.top() < 210_mm);
        CHECK(mark.area.bottom() > 210_mm);
        CHECK(mark.area.size.width <= stock.safe_margin);
    }
    CHECK(marks[0].area.left() == 100_mm);
    CHECK(marks[1].area.right() == 200_mm);
    stock.cut = false;
    CHECK(half_marks(stock, 3).empty());
    // A wide cell is cut from top to bottom.
    auto lying = quarters();
    lying.sheet = {280_mm, 200_mm};
    lying.cell = lying.pitch = {140_mm, 100_mm};
    const auto upright = half_marks(lying, 3);
    REQUIRE(upright.size() == 2);
    for (const auto& mark : upright) {
        CHECK(mark.area.left() < 210_mm);
        CHECK(mark.area.right() > 210_mm);
        CHECK(mark.area.size.height <= lying.safe_margin);
    }
    CHECK(upright[0].area.top() == 100_mm);
    CHECK(upright[1].area.bottom() == 200_mm);
}

TEST_CASE("halves need room between their safe margins, and no roll is cut apart") {
    auto stock = quarters();
    CHECK(check_geometry(stock).empty());
    stock.safe_margin = 36_mm; // a whole cell would have room
    CHECK(check_geometry(stock).size() == 1);
    stock.halves = false;
    CHECK(check_geometry(stock).empty());
}
