// What the kinds of area without words ask for and draw.

#include "labels.h"

#include <cmath>

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

/// A label with a code at the right, whose rows are `rows`, and what is left ruled for a pen.
Layout with_code(const std::string& rows, const std::string& stand) {
    return testing::layout_from(R"(
print = "bag label"
picture = ["dish code", "pen code"]
columns = ["share", "20 mm"]
column_gap = "2 mm"
row_gap = "1 mm"
rows = )" + rows + R"(
[area]
dish = { words = "dish", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
pen  = { kind = "write" }
code = { kind = "code", stand = ")" +
                                stand + "\" }\n");
}

Arrangement arranged(const Layout& layout, bool has_code, Length height) {
    auto print = testing::small_label();
    print.has_code = has_code;
    return arrange(layout, testing::shaped(print, layout), {80_mm, height}, {{1.0}, 0},
                   testing::fonts());
}

const PlacedArea& placed(const Arrangement& arrangement, const Layout& layout, const char* name) {
    return arrangement.areas[static_cast<std::size_t>(layout.area(name) - layout.areas.data())];
}

} // namespace

TEST_CASE("a code is square: rows that follow their content grow to its width") {
    const auto layout = with_code(R"(["content", "content"])", "top");
    const auto with = arranged(layout, true, 40_mm);
    CHECK(placed(with, layout, "code").place.size.height.in_millimetres() == doctest::Approx(20.0));
    CHECK(arranged(layout, true, 15_mm).overflow.in_millimetres() == doctest::Approx(5.0));
    CHECK(arranged(layout, false, 15_mm).fits());
    CHECK_FALSE(placed(arranged(layout, false, 40_mm), layout, "code").shown);
}

TEST_CASE("what has no words takes no shorter form and never drops") {
    for (const Area& area : {Area{{}, {}, {}, ChartArea{}}, Area{{}, {}, {}, PatternArea{}}}) {
        CHECK(shorten_of(area, 1) == 0);
        CHECK(drop_of(area) == 0);
    }
}

TEST_CASE("how much of a code shall be restored is said by the letters of its standard") {
    // ISO/IEC 18004:2015, 6.5.1: levels L, M, Q and H.
    using enum code::Level;
    for (const auto& [written, level] :
         {std::pair{"L", Low}, {"M", Medium}, {"Q", Quartile}, {"H", High}}) {
        CAPTURE(std::string{written});
        const auto layout =
            with_code(R"(["content", "content"])", std::string{"top\", level = \""} + written);
        CHECK(std::get<CodeArea>(layout.area("code")->kind).durable.level == level);
    }
}

TEST_CASE("a code takes what rows of a given height leave it, and stands where its area says") {
    for (const auto& [stand, top] :
         {std::pair<std::string, double>{"top", 0.0}, {"middle", 10.0}, {"bottom", 20.0}}) {
        CAPTURE(stand);
        const auto layout = with_code(R"(["10 mm", "share"])", stand);
        const auto arrangement = arranged(layout, true, 40_mm);
        const auto& code = placed(arrangement, layout, "code");
        CHECK(code.place.size.height.in_millimetres() == doctest::Approx(20.0));
        CHECK(code.place.top().in_millimetres() == doctest::Approx(top));
    }
}

TEST_CASE("every module of a code is drawn on a dot of the printer, in the middle of its place") {
    code::SizedSymbol symbol;
    symbol.symbol.dark.assign(21 * 21, true);
    symbol.module = Length::inches(6.0 / 300.0);
    const auto layout = with_code(R"(["10 mm", "share"])", "top");
    const Rect place{{31.3_mm, 7.7_mm}, {20_mm, 20_mm}};
    const auto items = draw(Content{true}, *layout.area("code"), {}, place, {&symbol, {300.0}});
    REQUIRE(items.size() == 1);
    const auto& grid = std::get<ModuleGrid>(items.front());
    const double dots = grid.top_left.x.in_inches() * 300.0;
    CHECK(dots == doctest::Approx(std::round(dots)));
    const Length right = place.right() - (grid.top_left.x + grid.module * grid.side);
    CHECK((right - (grid.top_left.x - place.left())).in_millimetres() ==
          doctest::Approx(0.0).epsilon(0.1).scale(1.0));
    CHECK(draw(Content{true}, *layout.area("code"), {}, place).empty());
}

TEST_CASE("a place to write in asks for no room, and is ruled as far as there is some to spare") {
    const auto layout = with_code(R"(["content", "share"])", "top");
    const auto tight = arranged(layout, false, 8_mm);
    CHECK(tight.fits());
    const auto& pen = *layout.area("pen");
    const auto lines_in = [&](Length height) {
        return draw(Content{true}, pen, {}, {{5_mm, 5_mm}, {60_mm, height}});
    };
    CHECK(lines_in(8_mm).empty());
    CHECK(lines_in(17_mm).empty()); // one line is no place for notes
    const auto lines = lines_in(30_mm);
    REQUIRE(lines.size() == 3);
    for (const auto& line : lines) {
        CHECK(std::get<Rule>(line).area.size.width == 60_mm);
        CHECK(std::get<Rule>(line).area.bottom() <= 35_mm);
    }
}

TEST_CASE("a place to write in has its heading only where it is ruled") {
    const auto layout = testing::layout_from(R"(
print = "finishing card"
picture = ["pen"]
[area]
pen = { kind = "write", words = "pen-notes", x_height = ["1.3 mm", "1.5 mm", "1.6 mm"] }
)");
    wording::Print print;
    print.fields = {testing::field("pen-notes", {"Notes"})};
    const auto contents = testing::shaped(print, layout);
    const auto& pen = layout.areas.front();
    const auto type = type_at(pen, {1.0}, testing::fonts());
    const auto drawn_in = [&](Length height) {
        return draw(contents.front(), pen, type, {{5_mm, 5_mm}, {60_mm, height}});
    };
    CHECK(drawn_in(17_mm).empty());
    const auto items = drawn_in(24_mm);
    REQUIRE(items.size() == 3);
    CHECK(std::get<Text>(items[2]).run.text == "Notes");
    CHECK(std::get<Text>(items[2]).baseline.y < std::get<Rule>(items[0]).area.top());
}

TEST_CASE("a code stands at the left, in the middle or at the right, its quiet zone beside it") {
    code::SizedSymbol symbol;
    symbol.symbol.dark.assign(21 * 21, true);
    symbol.module = 0.5_mm;
    const Rect place{{10_mm, 10_mm}, {30_mm, 20_mm}};
    const auto left_of_code = [&](Align align) {
        CodeArea area;
        area.align = align;
        const auto items = draw(Content{true}, area, {}, place, {&symbol, {2540.0}});
        REQUIRE(items.size() == 1);
        return std::get<ModuleGrid>(items.front()).top_left.x.in_millimetres();
    };
    // 21 modules of version 1, and 4 light ones on each side (ISO/IEC 18004, quiet zone; the
    // figure from memory): 14.5 mm of 30.
    CHECK(left_of_code(Align::Left) == doctest::Approx(10.0 + 2.0));
    CHECK(left_of_code(Align::Centre) == doctest::Approx(10.0 + 7.75 + 2.0));
    CHECK(left_of_code(Align::Right) == doctest::Approx(10.0 + 15.5 + 2.0));
}
