#include "layout/sheets/stock_drawing.h"
#include "support/shipped_fonts.h"
#include "unit/layout/frames.h"
#include "unit/layout/stocks.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

namespace thawslip::layout {
namespace stock_drawing_test {
namespace {

const Size a4{210_mm, 297_mm};
const Size letter{8.5_in, 11_in};

const typeset::FontSet& fonts() {
    static const typeset::FontSet set = test_support::shipped_fonts();
    return set;
}

Frame drawn(const Stock& stock, Size page = a4) {
    const auto frame = stock_drawing(stock, page, fonts());
    REQUIRE(frame.ok());
    return frame.value();
}

} // namespace

TEST_CASE("a stock is drawn to scale, cell by cell") {
    const Stock stock = ten_labels();
    const Frame frame = drawn(stock, letter);
    const auto outlines = items_of<Outline>(frame);
    REQUIRE(outlines.size() == 12); // the sheet, ten cells, the first one's safe area
    const Rect sheet = outlines.front().area;
    CHECK(sheet.size.width.in_inches() == doctest::Approx(8.5 / 2));
    CHECK(sheet.size.height.in_inches() == doctest::Approx(11.0 / 2));
    for (int cell = 0; cell < stock.cells(); ++cell) {
        const Rect& area = outlines[static_cast<std::size_t>(cell + 1)].area;
        const Rect expected = stock.cell_at(cell);
        CHECK(((area.left() - sheet.left()) * 2).in_points() ==
              doctest::Approx(expected.left().in_points()));
        CHECK(((area.bottom() - sheet.top()) * 2).in_points() ==
              doctest::Approx(expected.bottom().in_points()));
    }
    CHECK((outlines.back().area.size.height * 2).in_millimetres() == doctest::Approx(50.8 - 4));
}

TEST_CASE("the drawing says its scale, its measures and the number of each cell") {
    const Frame frame = drawn(ten_labels(), letter);
    CHECK(has_line(frame, "letter-2x5-4x2in"));
    CHECK(has_line(frame, "drawn at 1 : 2"));
    CHECK(has_line(frame, "b  cell, across: 4 in (101.6 mm)"));
    CHECK(has_line(frame, "k  paper, down: 11 in (279.4 mm)"));
    for (int row = 0; row < 5; ++row) { // two numbers stand on each row's line
        CHECK(has_line(frame, std::to_string(row * 2 + 1) + std::to_string(row * 2 + 2)));
    }
}

TEST_CASE("each measure's letter stands at the middle of its line, above it or to its left") {
    const Frame frame = drawn(ten_labels(), letter);
    const auto near = [](Length a, Length b) { return std::abs((a - b).in_millimetres()) < 0.01; };
    int letters = 0;
    for (const auto& text : items_of<Text>(frame)) {
        if (text.run.text.size() != 1 || text.run.text < "a" || text.run.text > "z") {
            continue;
        }
        CAPTURE(text.run.text);
        const Length centre = text.baseline.x + text.size * text.run.width() / 2;
        const auto rules = items_of<Rule>(frame);
        CHECK(std::ranges::any_of(rules, [&](const Rule& rule) {
            const Point middle{(rule.area.left() + rule.area.right()) / 2,
                               (rule.area.top() + rule.area.bottom()) / 2};
            const bool above = near(centre, middle.x) && near(text.baseline.y, middle.y - 0.8_mm);
            const bool beside =
                near(centre, middle.x - 2_mm) && near(text.baseline.y, middle.y + 1_mm);
            return above || beside;
        }));
        ++letters;
    }
    CHECK(letters >= 10);
}

TEST_CASE("what is small is drawn at full size, never enlarged") {
    Stock card;
    card.name = "card-a7";
    card.sheet = card.cell = card.pitch = {105_mm, 74_mm};
    const Frame frame = drawn(card);
    CHECK(items_of<Outline>(frame).front().area.size == card.sheet);
    CHECK(has_line(frame, "drawn at full size"));
}

TEST_CASE("everything of a drawing stands on its page, whatever the stock") {
    Stock stock = cut_from_a4(1, 1, {10_mm, 10_mm});
    for (const Size page : {a4, letter, smallest_drawing_page, Size{297_mm, 210_mm}}) {
        for (const auto& one : {ten_labels(), stock, cut_from_a4(18, 28, {11_mm, 10_mm})}) {
            CHECK(all_on_page(drawn(one, page)));
        }
        Stock vast = stock;
        vast.sheet = {largest_side, smallest_side};
        vast.first = {};
        CHECK(all_on_page(drawn(vast, page)));
    }
}

TEST_CASE("marks are drawn where plain paper is cut") {
    const auto rules_of = [](bool cut) {
        Stock stock = cut_from_a4(2, 5, {90_mm, 50_mm});
        stock.cut = cut;
        return items_of<Rule>(drawn(stock)).size();
    };
    CHECK(rules_of(true) == rules_of(false) + 18);
}

TEST_CASE("a page that is too small, or a name that cannot be set, is refused in words") {
    const auto small = stock_drawing(ten_labels(), {105_mm, 148_mm}, fonts());
    REQUIRE_FALSE(small.ok());
    CHECK(small.fault() == "the page is 105 x 148 mm, expected at least 148 x 210 mm");
    Stock stock = ten_labels();
    stock.name = "plum \u4e00";
    const auto unknown = stock_drawing(stock, a4, fonts());
    REQUIRE_FALSE(unknown.ok());
    CHECK(unknown.fault() == "the faces cannot set U+4E00 \"\u4e00\" of the name or description");
}

} // namespace stock_drawing_test
} // namespace thawslip::layout
