// One frame as PDF and as SVG, drawn by two programs that share no code (Poppler's Splash and
// librsvg's cairo): the same picture but for how each shades the dots along an edge.
#include "layout/sheets/pen.h"
#include "pictures.h"
#include "render/svg.h"
#include "support/command.h"
#include "support/random.h"
#include "support/shipped_fonts.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::literals;
using namespace thawslip::test_support;

namespace {

constexpr int dots_per_inch = 600;

/// How far a dot may lie outside the shades that the other picture has in the three by three dots
/// around it: an edge may be shaded otherwise or fall on the next dot (0.04 mm), no more.
constexpr int tolerance = 40;

/// Mean difference of the shades, of 255: measured 0.8 to 0.9.
constexpr double mean_tolerance = 1.0;

struct Difference {
    int beyond = 0; ///< dots outside what antialiasing explains
    double mean = 0.0;
};

struct Shades {
    int least = 255;
    int most = 0;
};

Shades around(const Raster& page, int x, int y) {
    Shades shades;
    for (int v = std::max(y - 1, 0); v <= std::min(y + 1, page.height - 1); ++v) {
        for (int u = std::max(x - 1, 0); u <= std::min(x + 1, page.width - 1); ++u) {
            shades.least = std::min<int>(shades.least, page.at(u, v));
            shades.most = std::max<int>(shades.most, page.at(u, v));
        }
    }
    return shades;
}

bool explained(const Raster& page, const Raster& other, int x, int y) {
    const auto shades = around(other, x, y);
    const int shade = page.at(x, y);
    return shade >= shades.least - tolerance && shade <= shades.most + tolerance;
}

Difference compare(const Raster& a, const Raster& b) {
    REQUIRE(a.width == b.width);
    REQUIRE(a.height == b.height);
    Difference difference;
    for (int y = 0; y < a.height; ++y) {
        for (int x = 0; x < a.width; ++x) {
            const int off = std::abs(a.at(x, y) - b.at(x, y));
            difference.mean += off;
            if (off > tolerance && !(explained(a, b, x, y) && explained(b, a, x, y))) {
                ++difference.beyond;
            }
        }
    }
    difference.mean /= static_cast<double>(a.pixels.size());
    return difference;
}

/// Text in three faces and many sizes, with fractions, accents and marks; rules; boxes with square
/// and round corners; a code.
layout::Frame card(const typeset::FontSet& fonts) {
    layout::Frame frame;
    frame.sheet = {288_pt, 216_pt};
    layout::Pen pen{frame, fonts};
    pen.write("Squash and red lentil stew", {12.3_pt, 26.1_pt}, {15.7_pt, typeset::Weight::Bold});
    pen.write("AVATAR To Wa. office fi, ǻ, Ω, ж, Ɫ̂ ☐", {12.3_pt, 42_pt},
              {9.25_pt, typeset::Weight::Medium});
    pen.write_paragraph("Slow cooker, low, 7–9 h, to 74 °C in the middle. Add ½ l stock; crème "
                        "fraîche, œufs, Łódź, İğüş at the end.",
                        {12.3_pt, 50_pt}, 130_pt, {6.5_pt});
    frame.items.push_back(layout::Rule{{{12_pt, 100_pt}, {130.5_pt, 0.5_pt}}});
    frame.items.push_back(layout::Rule{{{150_pt, 50_pt}, {1.25_pt, 80_pt}}});
    frame.items.push_back(layout::Outline{{{12_pt, 110_pt}, {8_pt, 8_pt}}, 0.7_pt, 0_pt});
    frame.items.push_back(layout::Outline{{{30_pt, 110_pt}, {100_pt, 40_pt}}, 1.5_pt, 9_pt});
    frame.items.push_back(layout::Outline{{{30_pt, 160_pt}, {60_pt, 20_pt}}, 0.5_pt, 10_pt});
    layout::ModuleGrid grid{{170.1_pt, 60.7_pt}, 1.737_pt, 45, {}};
    test_support::Random random{45};
    for (int i = 0; i < 45 * 45; ++i) {
        grid.dark.push_back(random.chance(2));
    }
    frame.items.push_back(grid);
    REQUIRE_FALSE(pen.fault());
    return frame;
}

} // namespace

TEST_CASE("PDF and SVG of a frame are the same picture within antialiasing") {
    const auto fonts = shipped_fonts();
    auto frame = card(fonts);
    const layout::Correction corrections[] = {
        {},
        {1.004, 0.997, 0.0, {1.3_pt, -0.7_pt}, 0.0},
        {1.0, 1.0, 0.006, {}, 0.004},
    };
    for (const auto& correction : corrections) {
        frame.correction = correction;
        CAPTURE(correction.skew);
        CAPTURE(correction.scale_x);
        const auto difference = compare(pdf_picture(frame, fonts, dots_per_inch),
                                        svg_picture(frame, fonts, dots_per_inch));
        CAPTURE(difference.mean);
        CHECK(difference.beyond <= 4); // of 4.3 million; 2 or 3 measured
        CHECK(difference.mean < mean_tolerance);
    }
}

TEST_CASE("the comparison notices a lost dot on an i, a nudge of 0.3 pt and a box less round") {
    const auto fonts = shipped_fonts();
    const auto frame = card(fonts);
    const auto whole = pdf_picture(frame, fonts, dots_per_inch);
    const auto beyond = [&](const layout::Frame& other) {
        return compare(whole, svg_picture(other, fonts, dots_per_inch)).beyond;
    };
    auto lost_dot = frame;
    for (auto& item : lost_dot.items) {
        auto* text = std::get_if<layout::Text>(&item);
        if (text != nullptr && text->size < 7_pt) {
            const auto& face = fonts.faces[text->run.face];
            for (auto& glyph : text->run.glyphs) {
                glyph.id = glyph.id == face.glyph_of(U'i') ? face.glyph_of(U'ı') : glyph.id;
            }
        }
    }
    CHECK(beyond(lost_dot) > 20);
    auto nudged = frame;
    std::get<layout::Text>(nudged.items[0]).baseline.x += 0.3_pt;
    CHECK(beyond(nudged) > 100);
    auto square = frame;
    for (auto& item : square.items) {
        if (auto* outline = std::get_if<layout::Outline>(&item)) {
            outline->corner_radius = outline->corner_radius * 0.8;
        }
    }
    CHECK(beyond(square) > 20);
}

TEST_CASE("a radius larger than the box can take is drawn alike in PDF and SVG") {
    const auto fonts = shipped_fonts();
    layout::Frame frame;
    frame.sheet = {72_pt, 72_pt};
    frame.items.push_back(layout::Outline{{{12_pt, 12_pt}, {40_pt, 20_pt}}, 1_pt, 30_pt});
    const auto difference =
        compare(pdf_picture(frame, fonts, dots_per_inch), svg_picture(frame, fonts, dots_per_inch));
    CHECK(difference.beyond == 0);
}

TEST_CASE("the last letter of a long line of small type stands where it should in an SVG") {
    const auto fonts = shipped_fonts();
    layout::Frame frame;
    frame.sheet = {400_pt, 12_pt};
    layout::Pen pen{frame, fonts};
    constexpr Length size = 4.1_pt;
    pen.write(std::string(150, 'n') + " l", {2_pt, 8_pt}, {size});
    const auto& run = std::get<layout::Text>(frame.items.at(0)).run;
    const Length origin = 2_pt + size * (run.width() - run.glyphs.back().advance);
    const auto outline = fonts.faces[run.face].outline(run.glyphs.back().id);
    double left = 1.0, right = 0.0; // of a plain bar
    for (const auto& piece : outline) {
        if (piece.kind == typeset::OutlinePiece::Kind::LineTo) {
            left = std::min(left, piece.x[0]);
            right = std::max(right, piece.x[0]);
        }
    }
    const Length wanted = origin + size * ((left + right) / 2);
    const Rect last{{origin - 0.3_pt, 0_pt}, {3_pt, 12_pt}};
    const auto found = middle_of_ink(svg_picture(frame, fonts, 1200), last, 1200);
    CHECK(std::abs(found.x.in_points() - wanted.in_points()) < 0.01);
}

TEST_CASE("an SVG is well-formed XML, tells title and words, and says how large the sheet is") {
    const auto fonts = shipped_fonts();
    layout::Frame frame;
    frame.sheet = {Length::millimetres(100), Length::millimetres(150)};
    layout::Pen pen{frame, fonts};
    pen.write("Bread & butter <\"best\">", {12_pt, 40_pt}, {12_pt});
    const ScratchFolder folder;
    const auto file = folder / "frame.svg";
    write_file(file, render::svg(frame, fonts, "Soup & stew <1>"));
    const auto read = [&file](const std::string& path) {
        return run("python3 -c \"import sys, xml.etree.ElementTree as t; r = t.parse(sys.argv[1])"
                   ".getroot(); s = '{http://www.w3.org/2000/svg}'; print(" +
                   path + ")\" " + shell_word(file));
    };
    CHECK(read("r.find(s + 'title').text").out == "Soup & stew <1>\n");
    CHECK(read("r.find(s + 'desc').text.strip()").out == "Bread & butter <\"best\">\n");
    // 100 mm at 254 dpi are 1000 dots.
    const auto picture = svg_picture(frame, fonts, 254);
    CHECK(picture.width == 1000);
    CHECK(picture.height == 1500);
}
