#include "render/svg.h"
#include "sheet_with.h"
#include "support/shipped_fonts.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <string>
#include <vector>

namespace svg_test {

using namespace thawslip;
using test_support::sheet_with;
using namespace thawslip::literals;

namespace {

const typeset::FontSet& fonts() {
    static const auto set = test_support::shipped_fonts();
    return set;
}

/// What is drawn on the sheet: all that stands in its group.
std::string drawn(const layout::Frame& frame) {
    const auto picture = render::svg(frame, fonts(), "Bag label");
    const auto begin = picture.find("<g");
    REQUIRE(begin != std::string::npos);
    REQUIRE(picture.ends_with("</g>\n</svg>\n"));
    return picture.substr(begin,
                          picture.size() - begin - std::string_view{"</g>\n</svg>\n"}.size());
}

std::string described(const std::string& title, const std::string& words) {
    layout::Text text;
    text.size = 9_pt;
    text.run.text = words;
    const auto picture = render::svg(sheet_with({text}), fonts(), title);
    const auto begin = picture.find("<title>");
    const auto end = picture.find("<rect");
    REQUIRE(begin < end);
    return picture.substr(begin, end - begin);
}

typeset::Glyph glyph(std::uint32_t id, double advance, double x_offset, double y_offset) {
    return {id, advance, x_offset, y_offset, 0, 0};
}

} // namespace

TEST_CASE("an SVG is as large as its sheet, and white") {
    layout::Frame frame;
    frame.sheet = {Length::millimetres(101.6), Length::millimetres(50.825)};
    const auto picture = render::svg(frame, fonts(), "");
    CHECK(picture.find(" width=\"101.6mm\" height=\"50.825mm\" viewBox=\"0 0 288 144.0709\" ") !=
          std::string::npos);
    CHECK(picture.find("<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>") !=
          std::string::npos);
    CHECK(drawn(frame) == "<g>\n");
}

TEST_CASE("rules and outlines stand where the frame has them, lengths in points") {
    CHECK(drawn(sheet_with({layout::Rule{{{12_pt, 60.25_pt}, {100_pt, 0.5_pt}}}})) ==
          "<g>\n<rect x=\"12\" y=\"60.25\" width=\"100\" height=\".5\"/>\n");
    const auto outline = [](Length radius) {
        return drawn(
            sheet_with({layout::Outline{{{10_pt, 20_pt}, {40_pt, 8_pt}}, 0.7_pt, radius}}));
    };
    CHECK(outline(1.25_pt) ==
          "<g>\n<rect x=\"10\" y=\"20\" width=\"40\" height=\"8\" rx=\"1.25\" fill=\"none\" "
          "stroke=\"#000\" stroke-width=\".7\"/>\n");
    // Two corners of a side take no more than the side.
    CHECK(outline(4_pt).find(" rx=\"4\"") != std::string::npos);
    CHECK(outline(4.5_pt).find(" rx=\"4\"") != std::string::npos);
    CHECK(outline(-1_pt).find(" rx=\"0\"") != std::string::npos);
}

TEST_CASE("the modules of a grid are one path, a run of them one box") {
    const layout::ModuleGrid grid{{20_pt, 30_pt}, 1.44_pt, 2, {true, true, false, true}};
    CHECK(drawn(sheet_with({grid})) == "<g>\n<path transform=\"matrix(1.44 0 0 1.44 20 30)\" "
                                       "d=\"M0 0h2v1h-2zM1 1h1v1h-1z\"/>\n");
}

TEST_CASE("a correction is laid around all that is drawn") {
    auto frame = sheet_with({});
    frame.correction = {1.01, 0.98, 0.002, {3_pt, -5_pt}, 0.004};
    CHECK(drawn(frame) == "<g transform=\"matrix(1.01 .004 .002 .98 3 -5)\">\n");
}

TEST_CASE("glyphs stand behind one another, moved as the run says, and each is drawn once") {
    const auto& face = fonts().faces[0]; // of 2048 units an em
    const auto n = face.glyph_of(U'n');
    const auto l = face.glyph_of(U'l');
    layout::Text text;
    text.size = 10.24_pt;
    text.baseline = {12_pt, 34.5_pt};
    text.run.glyphs = {glyph(n, 0.5, 0.0, 0.0), glyph(l, 0.25, 0.125, 0.0625),
                       glyph(n, 0.5, -0.25, -0.5)};
    const auto use = [](std::uint32_t id, const std::string& place) {
        return fmt::format("<use xlink:href=\"#f0g{}\" {}/>", id, place);
    };
    const auto glyphs =
        use(n, "x=\"0\"") + use(l, "x=\"1280\" y=\"128\"") + use(n, "x=\"1024\" y=\"-1024\"");
    CHECK(drawn(sheet_with({text})) ==
          "<g>\n<g transform=\"matrix(.005 0 0 -.005 12 34.5)\">" + glyphs + "</g>\n");
    text.tone = layout::Tone::White;
    CHECK(drawn(sheet_with({text})) ==
          "<g>\n<g transform=\"matrix(.005 0 0 -.005 12 34.5)\" fill=\"#fff\">" + glyphs +
              "</g>\n");
    const auto picture = render::svg(sheet_with({text, text}), fonts(), "");
    for (const auto id : {n, l}) {
        const auto definition = fmt::format("<path id=\"f0g{}\" d=\"", id);
        const auto at = picture.find(definition);
        CHECK(at != std::string::npos);
        CHECK(picture.find(definition, at + 1) == std::string::npos);
    }
}

TEST_CASE("a glyph's outline is its face's, in the face's own units") {
    const auto& face = fonts().faces[0];
    const auto o = face.glyph_of(U'o');
    layout::Text text;
    text.size = 10_pt;
    text.run.glyphs = {glyph(o, 0.5, 0.0, 0.0)};
    const auto picture = render::svg(sheet_with({text}), fonts(), "");
    const auto begin = picture.find(" d=\"") + 4;
    const auto path = picture.substr(begin, picture.find('"', begin) - begin);
    std::string wanted; // SVG 1.1, 8.3 "Path data"
    for (const auto& piece : face.outline(o)) {
        using Kind = typeset::OutlinePiece::Kind;
        const auto place = [&](int point) {
            const double units = face.units_per_em(); // halves of one between control points
            return fmt::format("{:g} {:g}", piece.x[point] * units, piece.y[point] * units);
        };
        switch (piece.kind) {
        case Kind::MoveTo: wanted += "M" + place(0) + "\n"; break;
        case Kind::LineTo: wanted += "L" + place(0) + "\n"; break;
        case Kind::QuadraticTo: wanted += "Q" + place(0) + " " + place(1) + "\n"; break;
        case Kind::Close: wanted += "Z\n"; break;
        }
    }
    CHECK(std::ranges::count(wanted, 'M') == 2);
    CHECK(path == wanted);
}

TEST_CASE("title and words are told as XML has them, and what it cannot have as a question") {
    // XML 1.0, 2.2 "Characters" and 2.4 "Character data and markup".
    CHECK(described("Soup & <stew>", "\"Best\" ½") ==
          "<title>Soup &amp; &lt;stew&gt;</title>\n<desc>&quot;Best&quot; ½\n</desc>\n");
    CHECK(described("a\tb\nc", "d") == "<title>a\tb\nc</title>\n<desc>d\n</desc>\n");
    CHECK(described("a\x1F b", "\x01") == "<title>a\uFFFD b</title>\n<desc>\uFFFD\n</desc>\n");
}

} // namespace svg_test
