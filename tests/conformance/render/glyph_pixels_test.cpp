// Every glyph that a page shows is compared, dot by dot, with the same glyph as FreeType draws it
// from the font file: a lost accent, an empty box or another letter cannot pass, whatever the text
// behind it says. Poppler draws glyphs through FreeType too, so not one of 256 shades may differ:
// what is checked is the way there, from text through subset, code and map to size and place.
#include "base/utf8.h"
#include "freetype.h"
#include "render/pdf.h"
#include "support/command.h"
#include "support/shipped_fonts.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>

namespace glyph_pixels_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

constexpr int dots_per_inch = 300;
constexpr double dot = 72.0 / dots_per_inch; // points

/// A glyph to draw, alone in its box, with its origin on the edge of a dot or a quarter dot.
struct Sample {
    char32_t character;
    std::uint32_t glyph;
    int x, y;     ///< of the origin, dots from the page's top left corner
    int quarters; ///< how far right of the dot's edge
};

struct Sheet {
    layout::Frame frame;
    std::vector<Sample> samples;
};

constexpr int sheet_width = 3400; ///< dots

layout::Text one_glyph(const typeset::Face& face, typeset::FaceId id, const Sample& sample,
                       Length size) {
    layout::Text text;
    text.run.face = id;
    append_utf8(text.run.text, sample.character);
    const double advance = static_cast<double>(face.advance(sample.glyph)) / face.units_per_em();
    text.run.glyphs.push_back(
        {sample.glyph, advance, 0.0, 0.0, 0, static_cast<std::uint32_t>(text.run.text.size())});
    text.size = size;
    // An eighth of a dot right and half a dot down of the place meant, which Poppler rounds down
    // to quarters and wholes: so no rounding on the way decides which.
    text.baseline = {Length::points((sample.x + sample.quarters / 4.0 + 0.125) * dot),
                     Length::points((sample.y + 0.5) * dot)};
    return text;
}

/// How wide and high a glyph's box is.
int box_of(int em) {
    return em * 2 + 10;
}

/// Characters in a grid of boxes, each glyph at another quarter of a dot.
Sheet sheet_of(const typeset::FontSet& fonts, typeset::FaceId id,
               const std::vector<char32_t>& characters, int em) {
    Sheet sheet;
    const int box = box_of(em);
    const int columns = sheet_width / box;
    const int rows = (static_cast<int>(characters.size()) + columns - 1) / columns;
    sheet.frame.sheet = {Length::points(columns * box * dot), Length::points(rows * box * dot)};
    for (const char32_t character : characters) {
        const int at = static_cast<int>(sheet.samples.size());
        const Sample sample{character, fonts.faces[id].glyph_of(character),
                            at % columns * box + box / 4, at / columns * box + box * 2 / 3, at % 4};
        sheet.frame.items.push_back(
            one_glyph(fonts.faces[id], id, sample, Length::points(em * dot)));
        sheet.samples.push_back(sample);
    }
    return sheet;
}

/// The largest difference in the sample's box between the page and FreeType's glyph.
int difference(const Raster& page, const Sample& sample, const GlyphInk& ink, int em) {
    int worst = 0;
    const int reach = box_of(em);
    for (int y = sample.y - reach * 2 / 3; y < sample.y + reach / 3; ++y) {
        for (int x = sample.x - reach / 4; x < sample.x + reach * 3 / 4; ++x) {
            if (x >= 0 && y >= 0 && x < page.width && y < page.height) {
                const int dark = 255 - page.at(x, y);
                worst = std::max(worst, std::abs(dark - ink.at(x - sample.x, y - sample.y)));
            }
        }
    }
    return worst;
}

Raster draw(const layout::Frame& frame, const typeset::FontSet& fonts) {
    const ScratchFolder folder;
    const auto file = folder / "glyphs.pdf";
    write_file(file, render::pdf({frame}, fonts, {"Glyphs", "en", {}}));
    return rasterise(file, 1, dots_per_inch);
}

/// All that the face has of the scripts that are set, and of marks, signs and arrows.
std::vector<char32_t> characters_of(const typeset::Face& face) {
    const std::pair<char32_t, char32_t> ranges[] = {
        {0x21, 0x7E},     {0xA1, 0x24F},    {0x370, 0x52F},  {0x1E00, 0x1EFF},
        {0x2010, 0x205E}, {0x2070, 0x2212}, {0x2610, 0x2612}};
    std::vector<char32_t> characters;
    for (const auto& [first, last] : ranges) {
        for (char32_t c = first; c <= last; ++c) {
            // These reach into the box of a neighbour: marks back over the letter before them, the
            // sign for parts in ten thousand forward.
            const bool mark = c >= 0x483 && c <= 0x489;
            const bool apart = c == 0xAD || mark || c == 0x2031;
            if (face.glyph_of(c) != 0 && !apart) {
                characters.push_back(c);
            }
        }
    }
    return characters;
}

} // namespace

TEST_CASE(
    "every glyph on paper is the font's own, dot by dot, in every face and at every quarter") {
    const auto fonts = shipped_fonts();
    // 5.3 pt at 300 dpi. Poppler sets glyphs on quarter dots as long as the face's box is at most
    // 50 dots high.
    constexpr int em = 22;
    for (std::size_t id = 0; id < fonts.faces.size(); ++id) {
        const auto& face = fonts.faces[id];
        CAPTURE(face.postscript_name());
        const auto characters = characters_of(face);
        CHECK(characters.size() > 500);
        const auto sheet = sheet_of(fonts, static_cast<typeset::FaceId>(id), characters, em);
        const auto page = draw(sheet.frame, fonts);
        const FreeTypeFace reference{face.path()};
        for (const auto& sample : sheet.samples) {
            CAPTURE(name_of(sample.character));
            const auto ink = reference.draw(sample.glyph, em, sample.quarters / 4.0);
            CHECK(difference(page, sample, ink, em) == 0);
        }
    }
}

TEST_CASE("what a cook's words need is drawn right from the smallest type to the largest") {
    const auto fonts = shipped_fonts();
    const auto id = fonts.chain(typeset::Weight::Bold).front();
    const auto& face = fonts.faces[id];
    const FreeTypeFace reference{face.path()};
    std::vector<char32_t> words;
    for (const char32_t c : std::u32string_view{U"Squash½¾°Cé–7ΩжšßœŁşğİığ“”’•×…"}) {
        REQUIRE(face.glyph_of(c) != 0);
        words.push_back(c);
    }
    for (const int em : {17, 25, 33, 50, 75, 125, 250}) { // 4.08 to 60 pt
        CAPTURE(em);
        const auto sheet = sheet_of(fonts, id, words, em);
        const auto page = draw(sheet.frame, fonts);
        for (const auto& sample : sheet.samples) {
            CAPTURE(name_of(sample.character));
            // Large glyphs stand on whole dots in Poppler, small ones on quarters.
            int best = 255;
            for (const double shift : {sample.quarters / 4.0, 0.0}) {
                const auto ink = reference.draw(sample.glyph, em, shift);
                best = std::min(best, difference(page, sample, ink, em));
            }
            CHECK(best == 0);
        }
    }
}

TEST_CASE("the comparison notices a lost accent, an empty box, another letter and a nudge") {
    const auto fonts = shipped_fonts();
    constexpr int em = 22;
    const auto id = fonts.chain(typeset::Weight::Regular).front();
    const auto& face = fonts.faces[id];
    const FreeTypeFace reference{face.path()};
    struct Case {
        const char* what;
        char32_t meant;
        std::uint32_t drawn;
    };
    const Case cases[] = {
        {"a lost accent", U'é', face.glyph_of(U'e')},
        {"an empty box", U'é', 0},
        {"another letter", U'C', face.glyph_of(U'G')},
        {"a lost dot", U'i', face.glyph_of(U'ı')},
        {"nothing at all", U'.', face.glyph_of(U' ')},
        {"a Greek letter for a Latin one of another shape", U'Y', face.glyph_of(U'Ψ')},
    };
    for (const auto& c : cases) {
        CAPTURE(c.what);
        auto sheet = sheet_of(fonts, id, {c.meant}, em);
        std::get<layout::Text>(sheet.frame.items[0]).run.glyphs[0].id = c.drawn;
        const auto ink = reference.draw(face.glyph_of(c.meant), em, 0.0);
        CHECK(difference(draw(sheet.frame, fonts), sheet.samples[0], ink, em) > 100);
    }
    auto nudged = sheet_of(fonts, id, {U'H'}, em);
    std::get<layout::Text>(nudged.frame.items[0]).baseline.x += Length::points(dot / 4);
    const auto ink = reference.draw(face.glyph_of(U'H'), em, 0.0);
    CHECK(difference(draw(nudged.frame, fonts), nudged.samples[0], ink, em) > 30);
}

} // namespace glyph_pixels_test
