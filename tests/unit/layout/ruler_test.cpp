#include "layout/sheets/ruler.h"
#include "support/shipped_fonts.h"
#include "unit/layout/frames.h"
#include "unit/layout/stocks.h"

#include <cmath>
#include <doctest/doctest.h>

namespace thawslip::layout {
namespace {

const Size a4{210_mm, 297_mm};

Frame page_of(Size page) {
    static const typeset::FontSet fonts = test_support::shipped_fonts();
    const auto frame = ruler_page(page, fonts);
    REQUIRE(frame.ok());
    return frame.value();
}

bool near(Length a, Length b) {
    return std::abs((a - b).in_points()) < 1e-6;
}

Point middle_of(const Rect& r) {
    return {r.left() + r.size.width / 2, r.top() + r.size.height / 2};
}

/// Whether a line of this length stands with its middle here.
bool has_rule(const Frame& frame, Point middle, Size size) {
    return std::ranges::any_of(items_of<Rule>(frame), [&](const Rule& rule) {
        const Point m = middle_of(rule.area);
        return near(m.x, middle.x) && near(m.y, middle.y) &&
               near(rule.area.size.width, size.width) && near(rule.area.size.height, size.height);
    });
}

} // namespace

TEST_CASE("the crosses stand where a ruler has whole half centimetres") {
    const auto crosses = ruler_crosses({8.5_in, 11_in});
    CHECK(crosses[0] == Point{30_mm, 30_mm});
    CHECK(crosses[1].x.in_millimetres() == doctest::Approx(185));
    CHECK(crosses[2].y.in_millimetres() == doctest::Approx(245));
    CHECK(crosses[3] == Point{crosses[1].x, crosses[2].y});
    CHECK(ruler_crosses(a4)[3].x.in_millimetres() == doctest::Approx(180));
}

TEST_CASE("each cross is drawn with its middle at its place") {
    for (const Size page : {a4, Size{8.5_in, 11_in}, Size{4_in, 6_in}, smallest_ruler_page}) {
        const Frame frame = page_of(page);
        for (const Point cross : ruler_crosses(page)) {
            CHECK(has_rule(frame, cross, {10_mm, 0.5_pt}));
            CHECK(has_rule(frame, cross, {0.5_pt, 10_mm}));
        }
    }
}

TEST_CASE("rulers count from the paper's own edges") {
    const Frame frame = page_of(a4);
    for (const double mm : {40.0, 100.0, 170.0}) {
        const Length x = Length::millimetres(mm);
        CHECK(has_rule(frame, {x, 20_mm}, {0.5_pt, 4_mm}));
        CHECK(has_rule(frame, {20_mm, x}, {4_mm, 0.5_pt}));
    }
    for (const double inches : {2.0, 5.0}) {
        const Length x = Length::inches(inches);
        CHECK(has_rule(frame, {x, a4.height - 20_mm}, {0.5_pt, 4_mm}));
        CHECK(has_rule(frame, {a4.width - 20_mm, x}, {4_mm, 0.5_pt}));
    }
    // A sixteenth of an inch further is the next, short line.
    CHECK(has_rule(frame, {2.0625_in, a4.height - 18.7_mm}, {0.5_pt, 1.4_mm}));
}

TEST_CASE("long lines have their number, inches and millimetres") {
    const Frame frame = page_of(a4);
    for (const char* number : {"40", "100", "180", "7", "9"}) {
        CAPTURE(number);
        CHECK(has_line(frame, number));
    }
    // No sixteenths, and none but the tenth millimetres.
    for (const char* number : {"16", "48", "112", "144", "45"}) {
        CAPTURE(number);
        CHECK_FALSE(has_line(frame, number));
    }
}

TEST_CASE("each number stands at its own line, from either corner") {
    const Frame frame = page_of(a4);
    const auto stands_at = [&frame](const std::string& number, const auto& is_there) {
        return std::ranges::any_of(items_of<Text>(frame), [&](const Text& text) {
            return text.run.text == number && is_there(text.baseline);
        });
    };
    for (int n = 2; n <= 6; ++n) {
        CAPTURE(n);
        const Length place = Length::inches(n);
        const auto is_near = [place](Length x) { return x > place - 2_mm && x < place + 2_mm; };
        CHECK(stands_at(std::to_string(n), [&](Point at) {
            return is_near(at.x) && at.y > a4.height - 35_mm && at.y < a4.height - 20_mm;
        }));
        CHECK(stands_at(std::to_string(n), [&](Point at) {
            return is_near(at.y) && at.x > a4.width - 35_mm && at.x < a4.width - 20_mm;
        }));
    }
    for (int mm = 40; mm <= 170; mm += 10) {
        CAPTURE(mm);
        const Length place = Length::millimetres(mm);
        const auto is_near = [place](Length x) { return x > place - 3_mm && x < place + 3_mm; };
        CHECK(stands_at(std::to_string(mm),
                        [&](Point at) { return is_near(at.x) && at.y > 20_mm && at.y < 35_mm; }));
        CHECK(stands_at(std::to_string(mm),
                        [&](Point at) { return is_near(at.y) && at.x > 20_mm && at.x < 35_mm; }));
    }
}

TEST_CASE("step n of each edge's stair lies n millimetres inside the paper") {
    const Frame frame = page_of(a4);
    for (int n = 1; n <= 12; ++n) {
        const Length deep = Length::millimetres(n);
        const Length along = Length::millimetres(4 * (n - 1) - 24 + 1.8);
        const Size level{3.6_mm, 0.5_pt};
        const Size upright{0.5_pt, 3.6_mm};
        CHECK(has_rule(frame, {a4.width / 2 + along, deep}, level));
        CHECK(has_rule(frame, {a4.width / 2 + along, a4.height - deep}, level));
        CHECK(has_rule(frame, {deep, a4.height / 2 + along}, upright));
        CHECK(has_rule(frame, {a4.width - deep, a4.height / 2 + along}, upright));
    }
}

TEST_CASE("the page carries its instructions, or says where they are") {
    for (const Size page : {a4, Size{8.5_in, 11_in}, Size{148_mm, 210_mm}, Size{297_mm, 210_mm}}) {
        const Frame frame = page_of(page);
        CHECK(has_line(frame, "[[printer]]"));
        CHECK(items_of<Outline>(frame).size() == 8); // boxes for four crosses
    }
    const Frame small = page_of({4_in, 6_in});
    CHECK(has_line(small, "thawslip stock ruler"));
    CHECK_FALSE(has_line(small, "[[printer]]"));
}

TEST_CASE("a ruler page is uncorrected, and all of it stands on the paper") {
    for (const Size page : {a4, Size{8.5_in, 11_in}, Size{148_mm, 210_mm}, Size{4_in, 6_in},
                            smallest_ruler_page, Size{500_mm, 95_mm}}) {
        const Frame frame = page_of(page);
        CHECK(frame.correction == Correction{});
        CHECK(all_on_page(frame));
    }
}

TEST_CASE("paper that is too small for four crosses is refused") {
    const auto frame = ruler_page({62_mm, 100_mm}, test_support::shipped_fonts());
    REQUIRE_FALSE(frame.ok());
    CHECK(frame.fault() ==
          "the paper is 62 x 100 mm, expected at least 90 x 90 mm for a ruler page");
}

} // namespace thawslip::layout
