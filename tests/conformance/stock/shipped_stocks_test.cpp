// Every stock that is shipped says of itself, in its name, what a ruler says of it.

#include "layout/files/stock_file.h"
#include "layout/sheets/crop_marks.h"
#include "layout/sheets/impose.h"
#include "layout/sheets/paper.h"
#include "layout/sheets/printable_area.h"
#include "layout/sheets/stock_drawing.h"
#include "support/shipped_fonts.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <optional>
#include <regex>
#include <string>

namespace thawslip::layout {
namespace {

const StockShelf& shelf() {
    static const StockShelf shipped = load_stocks(THAWSLIP_SOURCE_DIR "/layouts/stock");
    return shipped;
}

/// What a name states: `paper[-cards][-CxR][-size][-cut]`, where the paper may be `roll` or
/// `card`, and the size a measure, the name of a paper, or `full`.
struct Stated {
    std::string paper;
    std::optional<int> columns, rows;
    std::string size;
    bool cut = false;
};

std::optional<Stated> stated_by(const std::string& name) {
    static const std::regex pattern{"(letter|a[0-9]|roll|card)(?:-cards)?(?:-([0-9]+)x([0-9]+))?"
                                    "-(full|a[0-9]|[0-9.]+x[0-9.]+(?:mm|in))(-cut)?"};
    std::smatch part;
    if (!std::regex_match(name, part, pattern)) {
        return std::nullopt;
    }
    Stated stated{part[1], {}, {}, part[4], part[5].matched};
    if (part[2].matched) {
        stated.columns = std::stoi(part[2]);
        stated.rows = std::stoi(part[3]);
    }
    return stated;
}

/// Whether `side` rounds to the number written, to as many places as are written.
bool reads_as(Length side, const std::string& written, const std::string& unit) {
    const auto point = written.find('.');
    const int places =
        point == std::string::npos ? 0 : static_cast<int>(written.size() - point - 1);
    const double number = unit == "in" ? side.in_inches() : side.in_millimetres();
    // Only a fraction that goes on for ever, such as 1 1/3, may be rounded.
    const double slack = places >= 2 ? 0.5 * std::pow(10, -places) : 0.005;
    return std::abs(number - std::stod(written)) < slack;
}

bool cell_is(const Stock& stock, const std::string& stated) {
    if (stated == "full") {
        return stock.cell == stock.sheet;
    }
    if (stated.front() == 'a') {
        const Paper* paper = paper_of(stock.cell);
        return paper != nullptr && paper->name == stated;
    }
    static const std::regex pattern{"([0-9.]+)x([0-9.]+)(mm|in)"};
    std::smatch part;
    return std::regex_match(stated, part, pattern) &&
           reads_as(stock.cell.width, part[1], part[3]) &&
           reads_as(stock.cell.height, part[2], part[3]);
}

bool paper_is(const Stock& stock, const std::string& stated) {
    if (stated == "roll" || stated == "card") {
        return stock.sheet == stock.cell && stock.roll == (stated == "roll");
    }
    const Paper* paper = paper_of(stock.sheet);
    return paper != nullptr && paper->name == stated && !stock.roll;
}

} // namespace

TEST_CASE("every shipped stock loads without a word") {
    for (const auto& diagnostic : shelf().diagnostics) {
        FAIL_CHECK(to_text(diagnostic));
    }
    CHECK(shelf().stocks.size() >= 14);
}

TEST_CASE("every shipped stock is named by its own numbers") {
    for (const auto& stock : shelf().stocks) {
        CAPTURE(stock.name);
        const auto stated = stated_by(stock.name);
        REQUIRE(stated.has_value());
        CHECK(paper_is(stock, stated->paper));
        CHECK(cell_is(stock, stated->size));
        CHECK(stock.cut == stated->cut);
        if (stated->columns) {
            CHECK(stock.columns == *stated->columns);
            CHECK(stock.rows == *stated->rows);
        }
    }
}

TEST_CASE("a stock whose name leaves the grid out holds as many cells as there is room for") {
    for (const auto& stock : shelf().stocks) {
        CAPTURE(stock.name);
        if (!stated_by(stock.name)->columns) {
            CHECK(stock.columns == static_cast<int>(stock.sheet.width / stock.cell.width + 1e-9));
            CHECK(stock.rows == static_cast<int>(stock.sheet.height / stock.cell.height + 1e-9));
        }
    }
}

TEST_CASE("the cells of every shipped stock lie on the sheet, apart, and in the middle") {
    for (const auto& stock : shelf().stocks) {
        CAPTURE(stock.name);
        CHECK(check_geometry(stock).empty());
        const Rect sheet{{}, stock.sheet};
        for (int i = 0; i < stock.cells(); ++i) {
            REQUIRE(sheet.contains(stock.cell_at(i), Length::millimetres(0.005)));
            REQUIRE(stock.cell_at(i).contains(stock.safe_at(i)));
            for (int j = 0; j < i; ++j) {
                REQUIRE_FALSE(stock.cell_at(i).overlaps(stock.cell_at(j)));
            }
        }
        const Rect block = stock.block();
        CHECK((sheet.right() - block.right()).in_points() ==
              doctest::Approx(block.left().in_points()).epsilon(1e-6));
        CHECK((sheet.bottom() - block.bottom()).in_points() ==
              doctest::Approx(block.top().in_points()).epsilon(1e-6));
    }
}

TEST_CASE("a usual printer reaches all that may be printed on of every sheet and card") {
    for (const auto& stock : shelf().stocks) {
        CAPTURE(stock.name);
        if (!stock.roll) { // label printers print to the edge
            CHECK(touched_cells(stock, usual_insets).empty());
        }
        CHECK(crop_marks(stock).empty() == !stock.cut);
    }
}

TEST_CASE("there is stock for labels and cards, to peel and to cut, on both papers") {
    for (const char* name :
         {"letter-2x5-4x2in", "letter-2x5-4x2in-cut", "letter-cards-6x4in-cut",
          "letter-cards-4.25x5.5in-cut", "letter-full", "a4-2x4-99x68mm", "a4-2x5-90x50mm-cut",
          "a4-cards-a6-cut", "a4-cards-105x148mm-cut", "a4-full", "roll-100x150mm", "roll-4x6in",
          "roll-60x100mm", "card-6x4in", "card-5x3in", "card-a6", "card-a7"}) {
        CAPTURE(name);
        CHECK(std::ranges::count(shelf().stocks, name, &Stock::name) == 1);
    }
}

TEST_CASE("every shipped stock can be shown, on US Letter and on A4") {
    const auto fonts = test_support::shipped_fonts();
    for (const auto& stock : shelf().stocks) {
        CAPTURE(stock.name);
        for (const char* page : {"letter", "a4"}) {
            const auto drawing = stock_drawing(stock, *paper_size(page), fonts);
            REQUIRE(drawing.ok());
            CHECK(drawing.value().items.size() > 4);
        }
    }
}

TEST_CASE("the shipped stocks come by name, each with a line about it") {
    CHECK(std::ranges::is_sorted(shelf().stocks, {}, &Stock::name));
    for (const auto& stock : shelf().stocks) {
        CAPTURE(stock.name);
        CHECK_FALSE(stock.about.empty());
    }
}

} // namespace thawslip::layout
