#include "layout/sheets/impose.h"
#include "unit/layout/stocks.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <random>
#include <set>
#include <tuple>

namespace thawslip::layout {

TEST_CASE("prints fill a new sheet along rows and go on to the next") {
    const auto places = impose(ten_labels(), 12);
    REQUIRE(places.size() == 12);
    CHECK(places[0] == Place{0, 0});
    CHECK(places[9] == Place{0, 9});
    CHECK(places[10] == Place{1, 0});
    CHECK(places[11] == Place{1, 1});
}

TEST_CASE("a half-used sheet is used up before a new one") {
    const auto places = impose(ten_labels(), 4, {.first_cell = 7, .skipped_cells = {9}});
    CHECK(places == std::vector<Place>{{0, 6}, {0, 7}, {0, 9}, {1, 0}});
}

TEST_CASE("each page of a roll carries one print") {
    Stock roll;
    roll.sheet = roll.cell = roll.pitch = {100_mm, 150_mm};
    roll.roll = true;
    CHECK(impose(roll, 3) == std::vector<Place>{{0, 0}, {1, 0}, {2, 0}});
}

TEST_CASE("no prints take no cells") {
    CHECK(impose(ten_labels(), 0).empty());
}

TEST_CASE("no cell is used twice, none that is skipped, and the order is kept") {
    std::mt19937 random{20261017};
    const auto between = [&](int low, int high) {
        return low + static_cast<int>(random() % static_cast<unsigned>(high - low + 1));
    };
    for (int round = 0; round < 2000; ++round) {
        Stock stock;
        stock.columns = between(1, 7);
        stock.rows = between(1, 9);
        Imposition imposition{between(1, stock.cells()), {}};
        for (int n = between(0, 5); n > 0; --n) {
            imposition.skipped_cells.push_back(between(1, stock.cells()));
        }
        const int count = between(0, 200);
        if (!check_imposition(stock, imposition).empty()) {
            continue; // nothing of the first sheet is left
        }
        const auto places = impose(stock, count, imposition);
        REQUIRE(std::ssize(places) == count);

        const auto key = [](const Place& p) { return std::tuple{p.sheet, p.cell}; };
        REQUIRE(std::ranges::is_sorted(places, {}, key));
        std::set<std::tuple<int, int>> seen;
        for (const auto& place : places) {
            REQUIRE(seen.insert(key(place)).second);
            REQUIRE(place.cell >= 0);
            REQUIRE(place.cell < stock.cells());
            if (place.sheet == 0) {
                REQUIRE(place.cell + 1 >= imposition.first_cell);
                REQUIRE(std::ranges::count(imposition.skipped_cells, place.cell + 1) == 0);
            }
        }
        // No gap: as many sheets as are needed and no more.
        std::set<int> lost(imposition.skipped_cells.begin(), imposition.skipped_cells.end());
        std::erase_if(lost, [&](int cell) { return cell < imposition.first_cell; });
        const int used = imposition.first_cell - 1 + static_cast<int>(lost.size());
        const int sheets = count == 0 ? 0 : (count + used + stock.cells() - 1) / stock.cells();
        REQUIRE((places.empty() ? 0 : places.back().sheet + 1) == sheets);
    }
}

TEST_CASE("a cell that the sheet does not have is refused by its number") {
    const auto faults = check_imposition(ten_labels(), {11, {0, 3, 12}});
    REQUIRE(faults.size() == 3);
    CHECK(faults[0].key.text() == "first_cell");
    CHECK(faults[0].message ==
          "there is no cell 11: a sheet of \"letter-2x5-4x2in\" has cells 1 to 10");
    CHECK(faults[1].key.text() == "skipped_cells[1]");
    CHECK(faults[2].key.text() == "skipped_cells[3]");
}

TEST_CASE("of a stock with one cell the refusal says so") {
    const auto said = [](const Stock& stock) {
        return check_imposition(stock, {2, {}}).at(0).message;
    };
    CHECK(said(cut_from_a4(1, 1, {90_mm, 50_mm})) ==
          "there is no cell 2: \"a4-cut\" has one cell a sheet");
    Stock roll;
    roll.name = "roll-50x80mm";
    roll.roll = true;
    CHECK(said(roll) == "there is no cell 2: \"roll-50x80mm\" has one cell a page");
}

TEST_CASE("a first sheet with no cell left is refused") {
    const auto faults = check_imposition(ten_labels(), {9, {9, 10}});
    REQUIRE(faults.size() == 1);
    CHECK(faults[0].message == "no cell of the first sheet is left to print on");
    CHECK(check_imposition(ten_labels(), {9, {9}}).empty());
}

} // namespace thawslip::layout
