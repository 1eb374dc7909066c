// Where a reader of the PDF (MuPDF) puts each glyph, against where HarfBuzz says that it belongs.
#include "layout/sheets/pen.h"
#include "mupdf.h"
#include "render/pdf.h"
#include "support/command.h"
#include "support/shipped_fonts.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <hb.h>
#include <memory>

using namespace thawslip;
using namespace thawslip::literals;
using namespace thawslip::test_support;

namespace {

template <auto Free>
struct Freed {
    template <class T>
    void operator()(T* object) const {
        Free(object);
    }
};

struct Place {
    double x, y; ///< em, from the start of the run; y up
};

/// Glyph origins of one run by HarfBuzz alone: font file and text in, nothing of ours between.
std::vector<Place> harfbuzz_places(const std::string& font_file, const std::string& text) {
    const std::unique_ptr<hb_blob_t, Freed<hb_blob_destroy>> blob{
        hb_blob_create_from_file(font_file.c_str())};
    const std::unique_ptr<hb_face_t, Freed<hb_face_destroy>> face{hb_face_create(blob.get(), 0)};
    const std::unique_ptr<hb_font_t, Freed<hb_font_destroy>> font{hb_font_create(face.get())};
    const std::unique_ptr<hb_buffer_t, Freed<hb_buffer_destroy>> buffer{hb_buffer_create()};
    hb_buffer_add_utf8(buffer.get(), text.data(), static_cast<int>(text.size()), 0, -1);
    hb_buffer_set_language(buffer.get(), hb_language_from_string("en", -1));
    hb_buffer_guess_segment_properties(buffer.get());
    hb_shape(font.get(), buffer.get(), nullptr, 0);
    unsigned count = 0;
    const auto* positions = hb_buffer_get_glyph_positions(buffer.get(), &count);
    const double em = hb_face_get_upem(face.get());
    std::vector<Place> places;
    double x = 0.0;
    for (unsigned i = 0; i < count; ++i) {
        places.push_back({(x + positions[i].x_offset) / em, positions[i].y_offset / em});
        x += positions[i].x_advance;
    }
    return places;
}

const char* const lines[] = {
    "Squash and red lentil stew, 7–9 h, to 74 °C in the middle",
    "AVATAR To Wa. Ty, LT VA fi ffi office flat",
    "Crème brûlée, ½ l, ǻ, Ω, жир, Łódź, İğüş, œuf",
    "WAWAWAWAWAWAWAWAWAWAWAWAWAWAWAWAWAWAWAWAWAWAWA",
    "x̂ q̃ ẅ̇ m̃ with marks that stand on their letters",
    "iiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiiii",
};

layout::Frame text_sheet(const typeset::FontSet& fonts, double size) {
    layout::Frame frame;
    frame.sheet = {Length::points(48.0 * size + 20.0), Length::points(30.0 * size)};
    layout::Pen pen{frame, fonts};
    double y = 1.5 * size;
    for (const auto weight : {typeset::Weight::Regular, typeset::Weight::Bold}) {
        for (const char* line : lines) {
            pen.write(line, {Length::points(7.0 / 3.0), Length::points(y)},
                      {Length::points(size), weight});
            y += 1.7 * size;
        }
    }
    REQUIRE_FALSE(pen.fault());
    return frame;
}

/// How far off the farthest glyph of the frame is, in points.
double farthest(const layout::Frame& frame, const typeset::FontSet& fonts) {
    const ScratchFolder folder;
    const auto file = folder / "places.pdf";
    write_file(file, render::pdf({frame}, fonts, {"Places", "en", {}}));
    const auto shown = trace_glyphs(file, 1);
    std::size_t next = 0;
    double worst = 0.0;
    for (const auto& item : frame.items) {
        const auto& text = std::get<layout::Text>(item);
        const auto& face = fonts.faces[text.run.face];
        const double size = text.size.in_points();
        for (const auto& place : harfbuzz_places(face.path(), text.run.text)) {
            REQUIRE(next < shown.size());
            const auto& glyph = shown[next++];
            const Point meant =
                frame.correction({text.baseline.x + Length::points(place.x * size),
                                  text.baseline.y - Length::points(place.y * size)});
            CHECK(glyph.font.substr(7) == face.postscript_name());
            worst = std::max({worst, std::abs(glyph.x - meant.x.in_points()),
                              std::abs(glyph.y - meant.y.in_points())});
        }
    }
    CHECK(next == shown.size());
    return worst;
}

} // namespace

TEST_CASE("each glyph stands within 0.01 pt of where HarfBuzz puts it, from 4 to 60 pt") {
    const auto fonts = shipped_fonts();
    for (const double size : {4.0, 5.3, 6.5, 7.253, 8.0, 9.999, 10.0, 10.01, 11.987, 12.0, 12.01,
                              14.4, 18.0, 23.7, 36.0, 47.11, 60.0}) {
        CAPTURE(size);
        CHECK(farthest(text_sheet(fonts, size), fonts) < 0.01);
    }
}

TEST_CASE("the lines hold kerning, ligatures and several faces") {
    const auto fonts = shipped_fonts();
    const auto frame = text_sheet(fonts, 10.0);
    bool kerned = false;
    bool ligature = false;
    bool other_face = false;
    for (const auto& item : frame.items) {
        const auto& run = std::get<layout::Text>(item).run;
        const auto& face = fonts.faces[run.face];
        other_face = other_face || run.face != std::get<layout::Text>(frame.items[0]).run.face;
        for (const auto& glyph : run.glyphs) {
            const double own = static_cast<double>(face.advance(glyph.id)) / face.units_per_em();
            kerned = kerned || std::abs(glyph.advance - own) > 0.01;
            ligature = ligature || (glyph.text_end - glyph.text_begin == 2 &&
                                    run.text.substr(glyph.text_begin, 2) == "fi");
        }
    }
    CHECK(kerned);
    CHECK(ligature);
    CHECK(other_face);
}

TEST_CASE("a glyph with offsets is drawn beside and above its place, and the next one at its own") {
    const auto fonts = shipped_fonts();
    const auto& face = fonts.faces[0];
    layout::Frame frame;
    frame.sheet = {200_pt, 100_pt};
    layout::Text text;
    text.run.text = "abc";
    for (const char32_t c : {U'a', U'b', U'c'}) {
        const auto at = static_cast<std::uint32_t>(text.run.glyphs.size());
        text.run.glyphs.push_back({face.glyph_of(c), 0.7, 0.0, 0.0, at, at + 1});
    }
    text.run.glyphs[1].x_offset = -0.123;
    text.run.glyphs[1].y_offset = 0.456;
    text.baseline = {20.5_pt, 60.25_pt};
    const ScratchFolder folder;
    const auto file = folder / "offsets.pdf";
    for (const double size : {4.0, 9.3, 60.0}) {
        CAPTURE(size);
        text.size = Length::points(size);
        frame.items = {text};
        write_file(file, render::pdf({frame}, fonts, {"Offsets", "en", {}}));
        const auto shown = trace_glyphs(file, 1);
        REQUIRE(shown.size() == 3);
        const double x[] = {0.0, 0.7 - 0.123, 1.4};
        const double y[] = {0.0, 0.456, 0.0};
        for (std::size_t i = 0; i < 3; ++i) {
            CHECK(std::abs(shown[i].x - (20.5 + x[i] * size)) < 0.01);
            CHECK(std::abs(shown[i].y - (60.25 - y[i] * size)) < 0.01);
        }
    }
}
