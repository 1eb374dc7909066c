// What the file says about its faces, against the font programs that it embeds, as FreeType reads
// those.
#include "freetype.h"
#include "written.h"

#include <cmath>
#include <doctest/doctest.h>
#include <sstream>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// The file with every object spelled out, one key or element a line (qpdf's QDF form).
class Spelled {
public:
    explicit Spelled(const WordsFile& written) : file_{written.folder / "spelled.pdf"} {
        run("qpdf --qdf --object-streams=disable " + shell_word(written.file) + " " +
            shell_word(file_));
        text_ = read_file(file_);
    }

    const std::string& text() const { return text_; }

    /// The objects that hold `key`.
    std::vector<std::string> objects_with(const std::string& key) const {
        std::vector<std::string> objects;
        for (auto at = text_.find(" 0 obj\n"); at != std::string::npos;
             at = text_.find(" 0 obj\n", at + 1)) {
            const auto object = text_.substr(at, text_.find("endobj", at) - at);
            if (has(object, key)) {
                objects.push_back(object);
            }
        }
        return objects;
    }

    /// The bytes of the stream that `object` points at by `key`.
    std::string stream(const std::string& object, const std::string& key) const {
        const auto number = static_cast<int>(numbers(object, key).at(0));
        return run("qpdf --filtered-stream-data --show-object=" + std::to_string(number) + " " +
                   shell_word(file_))
            .out;
    }

    /// The numbers that follow `key`: one, or an array of them, arrays inside told flat.
    static std::vector<double> numbers(const std::string& object, const std::string& key) {
        auto at = object.find("/" + key + " ");
        REQUIRE(at != std::string::npos);
        at += key.size() + 2;
        std::string words = object.substr(at, object.find('/', at) - at);
        for (auto& c : words) {
            c = c == '[' || c == ']' ? ' ' : c;
        }
        std::istringstream in{words};
        std::vector<double> found;
        for (double number = 0; in >> number;) {
            found.push_back(number);
        }
        return found;
    }

private:
    std::string file_;
    std::string text_;
};

FreeTypeFace embedded(const WordsFile& written, const Spelled& spelled,
                      const std::string& descriptor) {
    const auto file = written.folder / "embedded.ttf";
    write_file(file, spelled.stream(descriptor, "FontFile2"));
    return FreeTypeFace{file};
}

std::string descriptor_of(const Spelled& spelled, const std::string& font) {
    const auto at = font.find("/BaseFont ") + 10;
    const auto name = font.substr(at, font.find('\n', at) - at);
    return spelled.objects_with("/FontName " + name + "\n").at(0);
}

/// The glyph that each code shows, from code 0 on.
std::vector<unsigned> glyph_map(const Spelled& spelled, const std::string& font) {
    const auto bytes = spelled.stream(font, "CIDToGIDMap");
    std::vector<unsigned> glyphs;
    for (std::size_t at = 0; at + 1 < bytes.size(); at += 2) {
        glyphs.push_back(static_cast<unsigned char>(bytes[at]) * 256U +
                         static_cast<unsigned char>(bytes[at + 1]));
    }
    return glyphs;
}

} // namespace

TEST_CASE("the font box is drawn tightly around the glyphs that can be shown") {
    // ISO 32000-1, Table 122: FontBBox is "the smallest rectangle enclosing the shape that would
    // result if all of the glyphs of the font were placed with their origins coincident". Parts of
    // composed glyphs are in the file too, but cannot be shown by themselves.
    const WordsFile written;
    const Spelled spelled{written};
    const auto fonts = spelled.objects_with("/CIDToGIDMap");
    CHECK(fonts.size() == 3);
    for (const auto& font : fonts) {
        const auto descriptor = descriptor_of(spelled, font);
        const auto box = Spelled::numbers(descriptor, "FontBBox");
        REQUIRE(box.size() == 4);
        const auto face = embedded(written, spelled, descriptor);
        const auto ink = face.box_around(glyph_map(spelled, font));
        const double wanted[] = {ink.left, ink.bottom, ink.right, ink.top};
        for (std::size_t side = 0; side < 4; ++side) {
            CAPTURE(side);
            CHECK(std::abs(box[side] - wanted[side]) <= 1.0);
        }
    }
}

TEST_CASE("stems are told as thick as they are drawn, so that bold tells more than regular") {
    // ISO 32000-1, Table 122: StemV is "the thickness, measured horizontally, of the dominant
    // vertical stems": here of an "l" that FreeType draws 1 000 dots large, 300 dots up.
    const WordsFile written;
    const Spelled spelled{written};
    const auto fonts = shipped_fonts();
    int told = 0;
    for (const auto& face : fonts.faces) {
        const auto ink = FreeTypeFace{face.path()}.draw(face.glyph_of(U'l'), 1000, 0.0);
        double drawn = 0.0;
        for (int x = 0; x < 1000; ++x) {
            drawn += ink.at(x, -300) / 255.0;
        }
        for (const auto& descriptor : spelled.objects_with("/Type /FontDescriptor")) {
            if (has(descriptor, "+" + face.postscript_name() + "\n")) {
                CAPTURE(face.postscript_name());
                CHECK(std::abs(Spelled::numbers(descriptor, "StemV").at(0) - drawn) <= 1.0);
                ++told;
            }
        }
    }
    CHECK(told == 3);
}

TEST_CASE("each code's width is that of the glyph it stands for, to half a thousandth of an em") {
    // ISO 19005-2, 6.2.11.5 "Font metrics" allows one unit (veraPDF profile PDFA-2B).
    const WordsFile written;
    const Spelled spelled{written};
    for (const auto& font : spelled.objects_with("/CIDToGIDMap")) {
        const auto face = embedded(written, spelled, descriptor_of(spelled, font));
        const auto glyphs = glyph_map(spelled, font);
        const auto widths = Spelled::numbers(font, "W");
        CHECK(widths.at(0) == 1); // codes are counted from 1
        REQUIRE(glyphs.size() == widths.size());
        for (std::size_t code = 1; code < widths.size(); ++code) {
            REQUIRE(glyphs[code] < static_cast<unsigned>(face.glyphs()));
            CHECK(std::abs(widths[code] - face.advance(glyphs[code])) <= 0.5);
        }
    }
}

TEST_CASE("the catalog asks for true size and tells title and language") {
    // ISO 32000-1, Table 150 "Entries in a viewer preferences dictionary".
    const WordsFile written;
    const auto text = Spelled{written}.text();
    CHECK(has(text, "/PrintScaling /None"));
    CHECK(has(text, "/DisplayDocTitle true"));
    CHECK(has(text, "/Lang (en)"));
    CHECK(text.substr(0, 8) == "%PDF-1.6");
}
