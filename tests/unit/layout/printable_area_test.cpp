#include "layout/sheets/printable_area.h"
#include "unit/layout/stocks.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

namespace thawslip::layout {

TEST_CASE("a sheet whose safe areas the printer reaches is left alone") {
    CHECK(touched_cells(ten_labels(), usual_insets).empty());
    CHECK(check_printable(ten_labels(), usual_insets).empty());
    CHECK(check_printable(ten_labels(), {}).empty());
}

TEST_CASE("an inkjet that cannot print the foot of the sheet costs the last row") {
    // 12.7 mm edge + 2 mm safe margin are clear; the printer leaves 16 mm: 1.3 mm are lost.
    const Insets inkjet{3_mm, 3_mm, 16_mm, 3_mm};
    const auto touched = touched_cells(ten_labels(), inkjet);
    REQUIRE(touched.size() == 2);
    CHECK(touched[0].cell == 8);
    CHECK(touched[1].cell == 9);
    CHECK(touched[0].lost.bottom.in_millimetres() == doctest::Approx(1.3));
    CHECK(touched[0].lost.top == Length{});

    const auto cautions = check_printable(ten_labels(), inkjet);
    REQUIRE(cautions.size() == 1);
    CHECK(cautions[0].severity == Severity::Caution);
    CHECK(cautions[0].message ==
          "the printer does not reach the bottom 16 mm of the sheet: on \"letter-2x5-4x2in\", "
          "cells 9 and 10 lose 1.3 mm of what may be printed on");
    REQUIRE(cautions[0].hints.size() == 2);
    CHECK(cautions[0].hints[0] == "a safe margin of 3.3 mm keeps clear of it");
}

TEST_CASE("the safe margin that the caution names is enough") {
    Stock stock = cut_from_a4(2, 2, {105_mm, 148_mm});
    const Insets insets{4.23_mm, 4.23_mm, 6.7_mm, 4.23_mm};
    CHECK(check_printable(stock, insets).size() == 4);
    stock.safe_margin = 6.1_mm;
    REQUIRE(check_printable(stock, insets).size() == 1);
    CHECK(check_printable(stock, insets)[0].hints[0] ==
          "a safe margin of 6.2 mm keeps clear of it");
    stock.safe_margin = 6.2_mm;
    CHECK(check_printable(stock, insets).empty());
}

TEST_CASE("what a correction pushes over the page's edge is found, too") {
    Correction correction;
    correction.offset = {-4_mm, {}};  // the printer prints 4 mm too far to the right
    const Stock stock = ten_labels(); // its safe areas begin 5.97 mm from the left
    const auto touched = touched_cells(stock, usual_insets, correction);
    REQUIRE(touched.size() == 5);
    CHECK(touched[0].cell == 0);
    CHECK(touched[1].cell == 2);
    CHECK(touched[0].lost.left.in_millimetres() == doctest::Approx(4.23 - (5.96875 - 4)));
    CHECK(touched[0].lost.right == Length{});
}

TEST_CASE("the safe margin named is enough for a page that is shrunk and turned") {
    Stock stock = cut_from_a4(2, 5, {104_mm, 58_mm});
    const Correction correction{0.96, 0.97, -0.01, {3_mm, 2_mm}, 0.01};
    for (int round = 0; !check_printable(stock, usual_insets, correction).empty(); ++round) {
        REQUIRE(round < 4); // one for each edge at most
        const auto hint = check_printable(stock, usual_insets, correction)[0].hints[0];
        const auto number = hint.substr(std::string{"a safe margin of "}.size());
        stock.safe_margin = std::max(stock.safe_margin, Length::millimetres(std::stod(number)));
    }
    CHECK(stock.safe_margin > 2_mm);
}

TEST_CASE("many cells in a row are told as a range, others one by one") {
    const Stock stock = cut_from_a4(6, 6, {35_mm, 49.5_mm});
    const auto cautions = check_printable(stock, {5_mm, {}, {}, 5_mm});
    REQUIRE(cautions.size() == 2);
    CHECK(cautions[0].message.find("cells 1 to 6 lose 3 mm") != std::string::npos);
    CHECK(cautions[1].message.find("cells 1, 7, 13, 19, 25 and 31 lose 3 mm") != std::string::npos);
}

TEST_CASE("up to four neighbours are named one by one, five and more as a range") {
    const auto told = [](int columns) {
        const Stock stock =
            cut_from_a4(columns, 6, {Length::millimetres(200.0 / columns), 49.5_mm});
        const auto cautions = check_printable(stock, {5_mm, {}, {}, {}});
        REQUIRE(cautions.size() == 1);
        return cautions[0].message;
    };
    const char* const named[] = {"cell 1 loses",          "cells 1 and 2 lose",
                                 "cells 1, 2 and 3 lose", "cells 1, 2, 3 and 4 lose",
                                 "cells 1 to 5 lose",     "cells 1 to 6 lose"};
    for (int columns = 1; columns <= 6; ++columns) {
        CAPTURE(told(columns));
        CHECK(told(columns).find(named[columns - 1]) != std::string::npos);
    }
}

} // namespace thawslip::layout
