#include "layout/sheets/dimensions.h"
#include "unit/layout/stocks.h"

#include <doctest/doctest.h>
#include <string>
#include <vector>

namespace thawslip::layout {
namespace {

std::vector<std::string> told(const Stock& stock) {
    std::vector<std::string> lines;
    for (const auto& dimension : dimensions(stock)) {
        lines.push_back(dimension.what + ": " + ruler_text(dimension.length(), stock));
    }
    return lines;
}

} // namespace

TEST_CASE("a grid is described by its edges, cell, gutter, pitch and paper") {
    CHECK(told(ten_labels()) == std::vector<std::string>{
                                    "left edge to the first cell: 5/32 in (3.97 mm)",
                                    "cell, across: 4 in (101.6 mm)",
                                    "gutter, across: 3/16 in (4.76 mm)",
                                    "last cell to the right edge: 5/32 in (3.97 mm)",
                                    "pitch, across: 4 3/16 in (106.36 mm)",
                                    "paper, across: 8 1/2 in (215.9 mm)",
                                    "upper edge to the first cell: 1/2 in (12.7 mm)",
                                    "cell, down: 2 in (50.8 mm)",
                                    "last cell to the lower edge: 1/2 in (12.7 mm)",
                                    "pitch, down: 2 in (50.8 mm)",
                                    "paper, down: 11 in (279.4 mm)",
                                });
}

TEST_CASE("of a whole sheet there is only the paper to measure") {
    Stock sheet;
    sheet.sheet = sheet.cell = sheet.pitch = {210_mm, 297_mm};
    CHECK(told(sheet) == std::vector<std::string>{"cell and paper, across: 210 mm",
                                                  "cell and paper, down: 297 mm"});
}

TEST_CASE("measures of edges, cells and gutters add up to the paper") {
    for (const auto& stock : {ten_labels(), cut_from_a4(2, 5, {90_mm, 50_mm})}) {
        Length across;
        for (const auto& dimension : dimensions(stock)) {
            if (dimension.direction == Dimension::Direction::Across && dimension.level == 0) {
                const bool comes_between = dimension.what.starts_with("gutter");
                const bool is_cell = dimension.what.starts_with("cell");
                const int times = is_cell ? stock.columns : comes_between ? stock.columns - 1 : 1;
                across += dimension.length() * times;
            }
        }
        CHECK(across.in_points() == doctest::Approx(stock.sheet.width.in_points()));
    }
}

TEST_CASE("a stock is told in whole sentences") {
    CHECK(in_words(ten_labels()) ==
          std::vector<std::string>{
              "Paper 8 1/2 x 11 in, which printers call na_letter_8.5x11in.",
              "10 cells in 2 columns and 5 rows, counted along rows from the top left.",
              "Kept free of ink: 2 mm inside each edge; corners are rounded by 2 mm."});
    CHECK(in_words(cut_from_a4(1, 2, {90_mm, 50_mm})).back() ==
          "Plain paper, cut by hand along the crop marks.");
    Stock roll;
    roll.sheet = roll.cell = roll.pitch = {62_mm, 100_mm};
    roll.roll = true;
    CHECK(in_words(roll).front() == "A roll; each page is one label of 62 x 100 mm.");
}

} // namespace thawslip::layout
