#include "layout/sheets/pen.h"
#include "render/dump.h"
#include "support/shipped_fonts.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::literals;

namespace {

/// One item of each kind.
layout::Frame small_card(const typeset::FontSet& fonts) {
    layout::Frame frame;
    frame.sheet = {4_in, 2_in};
    layout::Pen pen{frame, fonts};
    pen.write("Squash stew", {12_pt, 20_pt}, {9_pt, typeset::Weight::Bold});
    pen.write("7–9 h ☐", {12_pt, 31.25_pt}, {7.5_pt});
    frame.items.push_back(layout::Rule{{{0_pt, 40_pt}, {100_pt, 0.5_pt}}});
    frame.items.push_back(layout::Outline{{{10_pt, 60_pt}, {8_pt, 8_pt}}, 0.7_pt, 1_pt});
    frame.items.push_back(
        layout::ModuleGrid{{200_pt, 12_pt}, 1.44_pt, 2, {true, false, false, true}});
    return frame;
}

} // namespace

TEST_CASE("a frame is told in words, a line an item, columns under each other") {
    const auto fonts = test_support::shipped_fonts();
    // The checksum is CRC-32 of "1001": 0x5B4DB3A8 would be another grid.
    CHECK(render::dump(small_card(fonts), fonts) == R"(sheet      288.000 x 144.000
text        12.000   20.000   9.000 ClearSans-Bold "Squash stew"
text        12.000   31.250   7.500 ClearSans "7–9 h "
text        33.262   31.250   7.500 DejaVuSans "☐"
rule         0.000   40.000 100.000 x 0.500
outline     10.000   60.000 8.000 x 8.000 line 0.700 radius 1.000
modules    200.000   12.000 2 x 1.440 crc c3209381
)");
}

TEST_CASE("a correction is told whole, and only where there is one") {
    const auto fonts = test_support::shipped_fonts();
    layout::Frame frame;
    frame.sheet = {100_pt, 50_pt};
    CHECK(render::dump(frame, fonts) == "sheet      100.000 x 50.000\n");
    frame.correction = {1.001, 0.9985, -0.0004, {0.5_pt, -1.25_pt}, 0.0007};
    CHECK(render::dump(frame, fonts) ==
          "sheet      100.000 x 50.000\n"
          "corrected scale 1.001000 0.998500 skew -0.000400 0.000700 offset 0.500 -1.250\n");
    frame.correction = {};
    frame.correction.skew_y = 0.001;
    CHECK(render::dump(frame, fonts).find("skew 0.000000 0.001000") != std::string::npos);
}

TEST_CASE("quotes, backslashes and what cannot be seen are escaped in a dump") {
    const auto fonts = test_support::shipped_fonts();
    layout::Frame frame;
    frame.sheet = {100_pt, 50_pt};
    layout::Text text;
    text.run.text = "a \"b\" \\ c\n\x7f é";
    frame.items.push_back(text);
    const auto words = render::dump(frame, fonts);
    CHECK(words.ends_with("ClearSans \"a \\\"b\\\" \\\\ c\\x0a\\x7f é\"\n"));
}
