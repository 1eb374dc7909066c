// Faces that lack what most have: a hyphen, a space, an "x".

#include "paragraphs.h"
#include "support/face_files.h"

#include <doctest/doctest.h>
#include <ft2build.h>
#include FT_FREETYPE_H
#include FT_TRUETYPE_TABLES_H

namespace lesser_face_test {

using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

const std::string regular = clear_sans + "Regular.ttf";

FontSet without(std::u32string_view characters, const std::string& name) {
    return only(face_file_without(regular, characters, name));
}

/// The one line that `text` makes in these faces.
Line line_of(const std::string& text, const FontSet& fonts) {
    const auto paragraph = prepare({{text, Weight::Regular}}, fonts);
    REQUIRE(paragraph);
    const auto lines = paragraph.value().set(100.0);
    REQUIRE(lines.size() == 1);
    return lines.front();
}

char32_t refused_in(const std::string& text, const FontSet& fonts) {
    const auto paragraph = prepare({{text, Weight::Regular}}, fonts);
    return paragraph ? U'\0' : paragraph.fault().character;
}

} // namespace

TEST_CASE("a no-break hyphen is drawn as the hyphen that the face has, and stays one in the text") {
    const struct {
        std::u32string_view lacks;
        char32_t drawn_as;
    } cases[] = {
        {U"\u2011", U'\u2010'},
        {U"\u2010\u2011", U'-'},
        {U"-\u2011", U'\u2010'},
    };
    for (const auto& [lacks, drawn_as] : cases) {
        CAPTURE(static_cast<unsigned>(drawn_as));
        const auto fonts = without(lacks, "no_hyphen.ttf");
        const auto glyph = fonts.faces[0].glyph_of(drawn_as);
        REQUIRE(glyph != 0);
        const auto line = line_of("a\u2011b", fonts);
        CHECK(text_of(line) == "a\u2011b");
        REQUIRE(line.pieces.size() == 1);
        CHECK(line.pieces[0].run.glyphs.at(1).id == glyph);
    }
    CHECK(refused_in("a\u2011b", without(U"-\u2010\u2011", "no_hyphen.ttf")) == U'\u2011');
    // A hyphen that may part is one of its own.
    CHECK(refused_in("a\u2010b", without(U"\u2010\u2011", "no_hyphen.ttf")) == U'\u2010');
}

TEST_CASE("a word is cut without a hyphen where the face has none to draw") {
    const auto fonts = without(U"-", "no_sign.ttf");
    const auto word = prepare({{"Zwetschgenknödelteig", Weight::Regular}}, fonts);
    REQUIRE(word);
    std::string all;
    for (const auto& line : word.value().set(5.0)) {
        CHECK(line.width <= 5.0);
        for (const auto& piece : line.pieces) {
            CHECK(piece.run.glyphs.back().id != 0);
            CHECK(piece.run.glyphs.back().text_end == piece.run.text.size());
            all += piece.run.text;
        }
    }
    CHECK(all == "Zwetschgenknödelteig");
}

TEST_CASE("a rarer space is part of the common one where the face lacks it") {
    // The Unicode Standard 15.0, table 6-2 "Unicode Space Characters": THIN SPACE is a fifth of an
    // em (or a sixth), FOUR-PER-EM SPACE a fourth (from memory).
    const auto fonts = without(U"\u2005\u2009", "no_thin_space.ttf");
    const double tight = line_of("ab", fonts).width;
    CHECK(line_of("a\u2009b", fonts).width == doctest::Approx(tight + 0.2).epsilon(0.01));
    CHECK(line_of("a\u2005b", fonts).width == doctest::Approx(tight + 0.25).epsilon(0.01));
    CHECK(refused_in("a\u2009b", without(U" \u00A0\u2009", "no_space.ttf")) == U'\u2009');
}

TEST_CASE("where there is no x or no H to measure, the heights are those that the face claims") {
    const auto path = face_file_without(regular, U"xH", "no_x.ttf");
    const auto lesser = face_from(path);
    const auto& claimed = lesser.metrics();
    FT_Library library = nullptr;
    FT_Face face = nullptr;
    REQUIRE(FT_Init_FreeType(&library) == 0);
    REQUIRE(FT_New_Face(library, path.c_str(), 0, &face) == 0);
    const auto* table = static_cast<const TT_OS2*>(FT_Get_Sfnt_Table(face, FT_SFNT_OS2));
    REQUIRE(table != nullptr);
    REQUIRE(table->sxHeight > 0);
    const double em = face->units_per_EM;
    CHECK(claimed.x_height == doctest::Approx(table->sxHeight / em));
    CHECK(claimed.cap_height == doctest::Approx(table->sCapHeight / em));
    FT_Done_Face(face);
    FT_Done_FreeType(library);
}

TEST_CASE("what the last face of a chain lacks is what cannot be set") {
    // One character of two marks, of which the first face has neither and the last has one.
    const auto lesser = face_file_without(regular, U"é\u0301✓e", "no_e.ttf");
    auto fonts = make_font_set({{lesser, regular}, {lesser}, {lesser}});
    REQUIRE(fonts);
    CHECK(refused_in("e✓", fonts.value()) == U'✓');
    const auto e = prepare({{"e", Weight::Medium}}, fonts.value());
    REQUIRE_FALSE(e);
    CHECK(e.fault().character == U'e');
    CHECK(e.fault().reason == UnsettableCharacter::Reason::NoGlyph);
    CHECK(line_of("aea", fonts.value()).pieces.size() == 3);
}

} // namespace lesser_face_test
