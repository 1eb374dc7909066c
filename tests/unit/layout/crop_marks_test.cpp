#include "layout/sheets/crop_marks.h"
#include "unit/layout/stocks.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>

namespace thawslip::layout {
namespace {

bool is_upright(const Rule& rule) {
    return rule.area.size.height > rule.area.size.width;
}

Length line_of(const Rule& rule) {
    return is_upright(rule) ? rule.area.left() + crop_mark_thickness / 2
                            : rule.area.top() + crop_mark_thickness / 2;
}

} // namespace

TEST_CASE("die-cut stocks and rolls have no crop marks") {
    CHECK(crop_marks(ten_labels()).empty());
}

TEST_CASE("a grid with room has marks of the trade's measures at both ends of every cut") {
    const Stock stock = cut_from_a4(2, 5, {90_mm, 50_mm}); // edges of 15 and 23.5 mm
    const auto marks = crop_marks(stock);
    CHECK(std::ranges::count_if(marks, is_upright) == 2 * 3); // 2 columns share a line: 3 cuts
    CHECK(marks.size() == 2 * 3 + 2 * 6);                     // and 6 cuts between 5 rows
    const Rule& top_left = marks.front();
    CHECK(line_of(top_left).in_millimetres() == doctest::Approx(15));
    CHECK(top_left.area.bottom().in_millimetres() == doctest::Approx(23.5 - 3));
    CHECK(top_left.area.size.height.in_millimetres() == doctest::Approx(5));
}

TEST_CASE("cells with gutters have a mark for each of their edges") {
    Stock stock = cut_from_a4(2, 5, {80_mm, 50_mm});
    stock.pitch.width = 85_mm;
    stock.first.x = 20_mm;
    const auto marks = crop_marks(stock);
    CHECK(std::ranges::count_if(marks, is_upright) == 2 * 4);
}

TEST_CASE("where the edge is narrow the mark comes nearer, then gets shorter") {
    struct Case {
        double edge_mm, offset_mm, length_mm;
    };
    const Case cases[] = {{20, 3, 5}, {4.23 + 8, 3, 5}, {4.23 + 6, 1, 5}, {6.35, 0.5, 1.62}};
    for (const auto& c : cases) {
        CAPTURE(c.edge_mm);
        const Stock stock = cut_from_a4(1, 2, {210_mm - Length::millimetres(c.edge_mm * 2), 50_mm});
        const auto marks = crop_marks(stock);
        const auto level = std::ranges::find_if_not(marks, is_upright);
        REQUIRE(level != marks.end());
        const Length cells = stock.first.x;
        CHECK((cells - level->area.right()).in_millimetres() == doctest::Approx(c.offset_mm));
        CHECK(level->area.size.width.in_millimetres() == doctest::Approx(c.length_mm));
    }
}

TEST_CASE("four A6 cards that fill an A4 sheet are cut along marks on their common edges") {
    const Stock stock = cut_from_a4(2, 2, {105_mm, 148_mm});
    const auto marks = crop_marks(stock);
    REQUIRE(marks.size() == 4); // the outer cuts are the paper's own edges
    for (const auto& mark : marks) {
        const double line = line_of(mark).in_millimetres();
        CHECK(line == doctest::Approx(is_upright(mark) ? 105 : 148.5));
    }
}

namespace {

/// Whether marks are within what is printed, inside no cell, and all different.
bool are_fit(const Stock& stock, const std::vector<Rule>& marks) {
    const Rect area = printable_area(stock.sheet, usual_insets);
    bool fit = true;
    for (std::size_t i = 0; i < marks.size(); ++i) {
        fit = fit && area.contains(marks[i].area);
        for (int cell = 0; cell < stock.cells(); ++cell) {
            const Rect inside = stock.cell_at(cell).inset(crop_mark_thickness / 2);
            fit = fit && !marks[i].area.overlaps(inside);
        }
        for (std::size_t j = 0; j < i; ++j) {
            fit = fit && !(marks[i].area == marks[j].area);
        }
    }
    return fit;
}

} // namespace

TEST_CASE("marks are printable, outside all cells or on their common edge, and come once") {
    for (int cells = 1; cells <= 48; ++cells) {
        const int columns = (cells - 1) % 6 + 1;
        const int rows = (cells - 1) / 6 + 1;
        for (const double share : {0.6, 0.9, 0.95, 0.97, 1.0}) {
            for (const double gutter_mm : {0.0, 0.5, 3.0}) {
                CAPTURE(columns);
                CAPTURE(rows);
                CAPTURE(share);
                CAPTURE(gutter_mm);
                Stock stock =
                    cut_from_a4(columns, rows, {210_mm * share / columns, 297_mm * share / rows});
                stock.cell.width -= Length::millimetres(gutter_mm);
                stock.cell.height -= Length::millimetres(gutter_mm);
                CHECK(are_fit(stock, crop_marks(stock)));
            }
        }
    }
}

} // namespace thawslip::layout
