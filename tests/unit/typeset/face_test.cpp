#include "support/face_files.h"
#include "support/shipped_fonts.h"
#include "typeset/face.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

std::string fault_of(const std::string& path) {
    const auto face = Face::load(path);
    return face ? "" : face.fault().substr(face.fault().find(": ") + 2);
}

} // namespace

TEST_CASE("a face knows its name, its units and which characters it has") {
    const auto face = face_from(clear_sans + "Bold.ttf");
    CHECK(face.postscript_name() == "ClearSans-Bold");
    CHECK(face.units_per_em() == 2048);
    CHECK(face.glyph_of(U'e') != 0);
    CHECK(face.glyph_of(U'✓') == 0);
    CHECK(face.advance(face.glyph_of(U'M')) > face.advance(face.glyph_of(U'i')));
    CHECK(face.advance(1'000'000) == 0);
}

TEST_CASE("an outline is closed contours in em, within the glyph's box") {
    const auto face = face_from(clear_sans + "Regular.ttf");
    const auto outline = face.outline(face.glyph_of(U'o'));
    using Kind = OutlinePiece::Kind;
    const auto count = [&outline](Kind kind) {
        return std::count_if(outline.begin(), outline.end(),
                             [kind](const OutlinePiece& piece) { return piece.kind == kind; });
    };
    CHECK(count(Kind::MoveTo) == 2);
    CHECK(count(Kind::Close) == 2);
    double start = 0.0, pen = 0.0;
    for (const auto& piece : outline) {
        start = piece.kind == Kind::MoveTo ? piece.x[0] : start;
        CHECK((piece.kind != Kind::Close || pen == start));
        pen = piece.x[piece.kind == Kind::QuadraticTo ? 1 : 0];
        CHECK(piece.x[0] <= 1.0);
        CHECK(piece.y[0] >= -0.1);
        CHECK(piece.y[0] <= 0.7);
    }
    CHECK(face.outline(face.glyph_of(U' ')).empty());
    CHECK(face.outline(1'000'000).empty());
}

TEST_CASE("a file that is no usable face is refused in words that say what it is") {
    const auto whole = read_file(clear_sans + "Regular.ttf");
    const auto otf = std::string{"OTTO"} + whole.substr(4);
    const auto licence_bit = [&whole] {
        auto bytes = whole;
        const auto entry = bytes.find("OS/2");
        const auto at = [&bytes, entry](std::size_t i) {
            return static_cast<std::size_t>(static_cast<unsigned char>(bytes[entry + 8 + i]));
        };
        const auto type = (at(0) << 24U | at(1) << 16U | at(2) << 8U | at(3)) + 9;
        // The same in the second highest byte of the table's checksum, which stands in front.
        const auto added = static_cast<char>(2 - bytes[type]);
        bytes[entry + 5] = static_cast<char>(bytes[entry + 5] + added);
        bytes[type] = 2;
        return bytes;
    };
    const struct {
        std::string path;
        std::string fault;
    } cases[] = {
        {"/nowhere/none.ttf", "there is no such file"},
        {"/usr/share/fonts", "is not a plain file"},
        {"/dev/zero", "is not a plain file"},
        {face_file("empty.ttf", ""), "is not a TrueType font file"},
        {face_file("words.ttf", "plum and ginger compote"), "is not a TrueType font file"},
        {face_file("cff.ttf", otf),
         "has PostScript (CFF) outlines; a face with TrueType outlines is needed"},
        {face_file("web.ttf", "wOF2...."),
         "is packed for the web (WOFF2); an unpacked .ttf is needed"},
        {face_file("many.ttf", "ttcf...."),
         "is a collection of faces; a file with one face is needed"},
        {face_file("head.ttf", whole.substr(0, 40)), "is damaged: it is cut short"},
        {face_file("gpos.ttf", whole.substr(0, 50'000)),
         "is damaged: its table \"GPOS\" is cut short"},
        {face_file("licence.ttf", licence_bit()),
         "forbids embedding in documents (OS/2 fsType is 0x0002)"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.path);
        CHECK(fault_of(c.path) == c.fault);
    }
}

TEST_CASE("a face file cut anywhere is refused: letters would be missing") {
    const auto whole = read_file(clear_sans + "Regular.ttf");
    for (std::size_t size = 0; size < whole.size(); size += whole.size() / 60) {
        CAPTURE(size);
        const auto face = Face::load(face_file("cut.ttf", whole.substr(0, size)));
        REQUIRE_FALSE(face);
        CHECK(face.fault().find(".ttf: is ") != std::string::npos);
    }
}

TEST_CASE("a face file with one wrong byte is refused: a letter might be drawn wrong") {
    const auto whole = read_file(clear_sans + "Regular.ttf");
    constexpr std::size_t tables_begin = 400; // past the directory, whose sums are not summed
    for (std::size_t at = tables_begin; at < whole.size() - 4; at += whole.size() / 60) {
        CAPTURE(at);
        auto bytes = whole;
        bytes[at] = static_cast<char>(bytes[at] ^ 0x10);
        const auto face = Face::load(face_file("flipped.ttf", bytes));
        REQUIRE_FALSE(face);
        CHECK(face.fault().find("does not add up to its checksum") != std::string::npos);
    }
}

TEST_CASE("a font set opens a shared file once and names the file at fault") {
    const auto set = shipped_fonts();
    CHECK(set.faces.size() == 5);
    CHECK(set.chain(Weight::Regular).back() == set.chain(Weight::Medium).back());
    CHECK(set.metrics(Weight::Bold).x_height > 0.5);

    const auto broken = make_font_set({{clear_sans + "Regular.ttf"}, {"/none.ttf"}, {}});
    REQUIRE_FALSE(broken);
    CHECK(broken.fault() == "/none.ttf: there is no such file");
    const auto lacking = make_font_set({{clear_sans + "Regular.ttf"}, {}, {}});
    REQUIRE_FALSE(lacking);
    CHECK(lacking.fault() == "no font file is named for the weight medium");
}
