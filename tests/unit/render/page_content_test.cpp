#include "layout/sheets/pen.h"
#include "render/page_content.h"
#include "sheet_with.h"
#include "support/shipped_fonts.h"

#include <cmath>
#include <doctest/doctest.h>

namespace page_content_test {

using namespace thawslip;
using test_support::sheet_with;
using namespace thawslip::literals;

namespace {

std::string content_of(const layout::Frame& frame) {
    const auto fonts = test_support::shipped_fonts();
    render::PdfFonts used{fonts};
    return render::page_content(frame, used);
}

int count(const std::string& text, const std::string& what) {
    int found = 0;
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) {
        ++found;
    }
    return found;
}

/// A run of one letter, as often as asked, each with the same advance.
layout::Text letters(const typeset::Face& face, int number, double advance, Length size) {
    layout::Text text;
    text.size = size;
    text.baseline = {10_pt, 44_pt};
    for (int i = 0; i < number; ++i) {
        typeset::Glyph glyph;
        glyph.id = face.glyph_of(U'n');
        glyph.advance = advance;
        glyph.text_begin = static_cast<std::uint32_t>(i);
        glyph.text_end = glyph.text_begin + 1;
        text.run.glyphs.push_back(glyph);
        text.run.text += 'n';
    }
    return text;
}

} // namespace

TEST_CASE("y counts up from the foot of the sheet") {
    CHECK(content_of(sheet_with({layout::Rule{{{12_pt, 60_pt}, {100_pt, 0.5_pt}}}})) ==
          "12 83.5 100 .5 re\nf\n");
    CHECK(content_of(sheet_with({layout::Outline{{{10_pt, 20_pt}, {8_pt, 8_pt}}, 0.7_pt, {}}})) ==
          ".7 w\n10 116 8 8 re\nS\n");
}

TEST_CASE("a width of lines is told once") {
    const auto box = [](Length width) {
        return layout::Outline{{{10_pt, 20_pt}, {8_pt, 8_pt}}, width, {}};
    };
    const auto content = content_of(sheet_with({box(0.7_pt), box(0.7_pt), box(1_pt), box(1_pt)}));
    CHECK(count(content, ".7 w\n") == 1);
    CHECK(count(content, " w\n") == 2);
}

TEST_CASE("round corners are quarters of circles, to 0.03 % of their radius") {
    // A. Riškus, "Approximation of a cubic Bézier curve by circular arcs and vice versa" (2006),
    // from memory: control points 4/3 · (√2 − 1) = 0.552285 of the radius along the tangents.
    const auto rounded = [](Length width, Length height, Length radius) {
        return content_of(
            sheet_with({layout::Outline{{{10_pt, 20_pt}, {width, height}}, 1_pt, radius}}));
    };
    // From (10, 104) to (110, 124) as y counts up; 10 · 0.447715 is how far from a corner.
    CHECK(rounded(100_pt, 20_pt, 10_pt) == "20 104 m\n100 104 l\n"
                                           "105.523 104 110 108.477 110 114 c\n110 114 l\n"
                                           "110 119.523 105.523 124 100 124 c\n20 124 l\n"
                                           "14.477 124 10 119.523 10 114 c\n10 114 l\n"
                                           "10 108.477 14.477 104 20 104 c\ns\n");
    CHECK(rounded(100_pt, 20_pt, 30_pt) == rounded(100_pt, 20_pt, 10_pt));
    CHECK(rounded(20_pt, 100_pt, 4_pt) == "14 24 m\n26 24 l\n"
                                          "28.209 24 30 25.791 30 28 c\n30 120 l\n"
                                          "30 122.209 28.209 124 26 124 c\n14 124 l\n"
                                          "11.791 124 10 122.209 10 120 c\n10 28 l\n"
                                          "10 25.791 11.791 24 14 24 c\ns\n");
    CHECK(count(rounded(20_pt, 100_pt, -1_pt), " c\n") == 0);
}

TEST_CASE("white words are said to be white, and all that follows is black again") {
    const auto fonts = test_support::shipped_fonts();
    auto white = letters(fonts.faces.front(), 1, 0.6, 10_pt);
    white.tone = layout::Tone::White;
    const auto black = letters(fonts.faces.front(), 1, 0.6, 10_pt);
    const layout::Rule rule{{{0_pt, 0_pt}, {9_pt, 1_pt}}};
    const layout::Outline box{{{10_pt, 20_pt}, {8_pt, 8_pt}}, 1_pt, {}};
    const layout::ModuleGrid grid{{20_pt, 30_pt}, 1_pt, 1, {true}};
    const auto tones = [](std::vector<layout::Item> items) {
        const auto content = content_of(sheet_with(std::move(items)));
        return std::pair{count(content, "1 g\n"), count(content, "0 g\n")};
    };
    CHECK(tones({black, rule, black}) == std::pair{0, 0});
    CHECK(tones({white, white}) == std::pair{1, 1}); // black again at the end of the page
    CHECK(tones({white, black, white}) == std::pair{2, 2});
    for (const auto& item : std::vector<layout::Item>{rule, box, grid}) {
        const auto content = content_of(sheet_with({rule, white, item}));
        const auto end = content.find("ET\n");
        REQUIRE(end != std::string::npos);
        CHECK(content.find("1 g\n") < end);
        CHECK(content.substr(end, 7) == "ET\n0 g\n");
    }
}

TEST_CASE("what is open is closed before something else is drawn") {
    const auto fonts = test_support::shipped_fonts();
    const auto words = letters(fonts.faces.front(), 1, 0.6, 10_pt);
    const layout::Rule rule{{{0_pt, 0_pt}, {9_pt, 1_pt}}};
    const layout::Outline box{{{10_pt, 20_pt}, {8_pt, 8_pt}}, 1_pt, {}};
    const auto content = content_of(sheet_with({rule, words, rule, box, words, box}));
    CHECK(content.starts_with("0 143 9 1 re\nf\nBT\n"));
    CHECK(count(content, "ET\n0 143 9 1 re\nf\n10 116 8 8 re\nS\nBT\n") == 1);
    CHECK(content.ends_with("ET\n10 116 8 8 re\nS\n"));
    // In a text object that was opened anew, the place counts from its beginning.
    CHECK(count(content, "10 100 Td\n") == 2);
}

TEST_CASE("large type is corrected in finer steps, so that each is less than 0.0061 pt") {
    const auto fonts = test_support::shipped_fonts();
    const auto& face = fonts.faces[0];
    const double own = static_cast<double>(face.advance(face.glyph_of(U'n'))) / face.units_per_em();
    const double told = std::round(own * 1000.0) / 1000.0;
    const auto corrected = [&](Length size, double kern) {
        return content_of(sheet_with({letters(face, 2, told - kern, size)}));
    };
    // 0.00123 em: a thousandth, tenths and hundredths of one.
    CHECK(count(corrected(12_pt, 0.00123), ")1(") == 1);
    CHECK(count(corrected(12.5_pt, 0.00123), ")1.2(") == 1);
    CHECK(count(corrected(120_pt, 0.00123), ")1.2(") == 1);
    CHECK(count(corrected(121_pt, 0.00123), ")1.23(") == 1);
    // Nothing is corrected that is off by 0.008 pt or less.
    CHECK(count(corrected(10_pt, 0.00079), "TJ") == 0);
    CHECK(count(corrected(10_pt, 0.00081), "TJ") == 1);
    CHECK(count(corrected(10_pt, -0.00081), ")-1(") == 1);
}

TEST_CASE("a raised letter is let down before the next one, and at the end of its line") {
    const auto fonts = test_support::shipped_fonts();
    auto line = letters(fonts.faces.front(), 3, 0.6, 10_pt);
    const auto raised_at = [&](std::size_t which) {
        auto text = line;
        text.run.glyphs[which].y_offset = 0.25;
        return content_of(sheet_with({text}));
    };
    CHECK(content_of(sheet_with({line})).find(" Ts") == std::string::npos);
    for (const std::size_t which : {1U, 2U}) {
        CAPTURE(which);
        const auto content = raised_at(which);
        CHECK(count(content, " Ts\n") == 2);
        CHECK(content.find("2.5 Ts\n") < content.find("\n0 Ts\n"));
        CHECK(content.find("\n0 Ts\n") != std::string::npos);
    }
}

TEST_CASE("rules in a row are filled at once, and so are all modules of a grid") {
    const layout::Rule rule{{{0_pt, 0_pt}, {9_pt, 1_pt}}};
    CHECK(content_of(sheet_with({rule, rule, rule})) ==
          "0 143 9 1 re\n0 143 9 1 re\n0 143 9 1 re\nf\n");
    const layout::ModuleGrid grid{{20_pt, 30_pt}, 1.44_pt, 2, {true, true, false, true}};
    CHECK(content_of(sheet_with({grid})) == "q\n1.44 0 0 -1.44 20.000144 113.999856 cm\n"
                                            "0 0 1.9998 .9998 re\n1 1 .9998 .9998 re\nf\nQ\n");
}

TEST_CASE("words in a row share a text object, and a face and size are told once") {
    const auto fonts = test_support::shipped_fonts();
    auto frame = sheet_with({});
    layout::Pen pen{frame, fonts};
    pen.write("Made", {10_pt, 20_pt}, {7_pt});
    pen.write("Thaw", {10_pt, 30_pt}, {7_pt});
    pen.write("Cook", {10_pt, 40_pt}, {7_pt, typeset::Weight::Bold});
    const auto content = content_of(frame);
    CHECK(count(content, "BT\n") == 1);
    CHECK(count(content, "ET\n") == 1);
    CHECK(count(content, " Tf\n") == 2);
    CHECK(count(content, "10 124 Td\n") == 1);
    CHECK(count(content, "0 -10 Td\n") == 2);
}

TEST_CASE("a corrected page begins with the formula, y turned on both sides") {
    auto frame = sheet_with({});
    frame.correction = {1.01, 0.98, 0.002, {3_pt, 5_pt}, 0.004};
    // By hand: e = 3 + 0.002 · 144, f = 144 · (1 − 0.98) − 5.
    CHECK(content_of(frame) == "1.01 -.004 -.002 .98 3.288 -2.12 cm\n");
}

TEST_CASE("no correction stands where the font's own widths keep the glyphs in place") {
    const auto fonts = test_support::shipped_fonts();
    const auto& face = fonts.faces[0];
    const double own = static_cast<double>(face.advance(face.glyph_of(U'n'))) / face.units_per_em();
    const double told = std::round(own * 1000.0) / 1000.0;
    const auto shown = [](const layout::Text& text) { return content_of(sheet_with({text})); };
    CHECK(count(shown(letters(face, 40, told, 8_pt)), "TJ") == 0);
    // Half a thousandth of an em is 0.004 pt at 8 pt: the third glyph would be 0.008 pt off.
    const auto drifting = shown(letters(face, 40, told + 0.0005, 8_pt));
    CHECK(count(drifting, "TJ") == 1);
    CHECK(count(drifting, ")-1(") > 12);
    CHECK(count(drifting, ")-1(") < 21);
    // A kern of 20 thousandths after every letter but the last, which nothing follows.
    CHECK(count(shown(letters(face, 5, told - 0.020, 8_pt)), ")20(") == 4);
}

TEST_CASE("a string of codes escapes what would end it") {
    // Codes are counted up from 1, so 40 different glyphs reach "(" (40) by way of "\r" (13).
    const auto fonts = test_support::shipped_fonts();
    auto text = letters(fonts.faces[0], 41, 0.5, 8_pt);
    for (std::uint32_t i = 0; i < 41; ++i) {
        text.run.glyphs[i].id = 10 + i;
    }
    const auto content = content_of(sheet_with({text}));
    using namespace std::string_literals;
    CHECK(count(content, "\0\\r"s) == 1);
    CHECK(count(content, "\0\\("s) == 1);
    CHECK(count(content, "\0\\)"s) == 1);
    CHECK(count(content, "\r") == 0);
}

} // namespace page_content_test
