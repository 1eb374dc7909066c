// A correction moves what is drawn as its formula says, in the PDF and in the SVG.
#include "pictures.h"
#include "support/shipped_fonts.h"

#include <cmath>
#include <doctest/doctest.h>

namespace correction_test {

using namespace thawslip;
using namespace thawslip::literals;
using namespace thawslip::test_support;

namespace {

constexpr int dots_per_inch = 600;

Rect around(Point place) {
    return {{place.x - 14_pt, place.y - 14_pt}, {28_pt, 28_pt}};
}

void draw_cross(layout::Frame& frame, Point at) {
    frame.items.push_back(layout::Rule{{{at.x - 6_pt, at.y - 0.6_pt}, {12_pt, 1.2_pt}}});
    frame.items.push_back(layout::Rule{{{at.x - 0.6_pt, at.y - 6_pt}, {1.2_pt, 12_pt}}});
}

} // namespace

TEST_CASE("a correction moves crosses where its formula says, to 0.02 pt") {
    // A fifth of a dot: Poppler inks whatever an edge touches (0.018 measured; librsvg 0.000).
    // Frame's own words: x' = scale_x·x + skew·y + offset.x, y' = skew_y·x + scale_y·y + offset.y,
    // from the top left, y down. Worked out here again, not by Correction's own operator.
    struct Case {
        const char* what;
        layout::Correction correction;
    };
    const Case cases[] = {
        {"nothing", {}},
        {"moved", {1.0, 1.0, 0.0, {3.3_pt, -2.1_pt}, 0.0}},
        {"wider and lower", {1.013, 0.985, 0.0, {}, 0.0}},
        {"slanting to the right", {1.0, 1.0, 0.02, {}, 0.0}},
        {"slanting down", {1.0, 1.0, 0.0, {}, -0.015}},
        {"turned, as a crooked sheet is", {1.0, 1.0, -0.012, {1_pt, 2_pt}, 0.012}},
        {"all at once", {0.99, 1.01, 0.011, {-1.5_pt, 2.75_pt}, -0.007}},
    };
    const auto fonts = shipped_fonts();
    const Point crosses[] = {{40_pt, 40_pt}, {260_pt, 40_pt}, {40_pt, 180_pt}, {260_pt, 180_pt}};
    for (const auto& c : cases) {
        CAPTURE(c.what);
        layout::Frame frame;
        frame.sheet = {300_pt, 216_pt};
        frame.correction = c.correction;
        for (const auto& at : crosses) {
            draw_cross(frame, at);
        }
        for (const auto& page :
             {pdf_picture(frame, fonts, dots_per_inch), svg_picture(frame, fonts, dots_per_inch)}) {
            for (const auto& at : crosses) {
                const double x = at.x.in_points();
                const double y = at.y.in_points();
                const auto& k = c.correction;
                const double wanted_x = k.scale_x * x + k.skew * y + k.offset.x.in_points();
                const double wanted_y = k.skew_y * x + k.scale_y * y + k.offset.y.in_points();
                const auto found = middle_of_ink(page, around(at), dots_per_inch);
                CHECK(std::abs(found.x.in_points() - wanted_x) < 0.02);
                CHECK(std::abs(found.y.in_points() - wanted_y) < 0.02);
            }
        }
    }
}

} // namespace correction_test
