#include "render/pdf_file.h"
#include "render/pdf_fonts.h"
#include "render/pdf_objects.h"
#include "support/shipped_fonts.h"

#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <string>
#include <string_view>
#include <vector>

namespace pdf_objects_test {

using namespace thawslip;
using namespace thawslip::render;

namespace {

/// The words for what libharu could not do.
std::string said_of(HPDF_STATUS code) {
    HPDF_Error_Rec error{};
    error.error_no = code;
    error.detail_no = 7;
    try {
        check(error);
    } catch (const PdfError& fault) {
        return fault.what();
    }
    return {};
}

/// A file with one object, as `fill` makes it.
template <class Fill>
std::string file_with(const Fill& fill) {
    std::string bytes;
    PdfFile file{[&bytes](std::string_view piece) { bytes += piece; }};
    const auto reference = file.reserve();
    auto dictionary = file.dictionary();
    fill(dictionary);
    file.write(reference, dictionary);
    file.finish();
    return bytes;
}

bool has(const std::string& bytes, std::string_view what) {
    return bytes.find(what) != std::string::npos;
}

} // namespace

TEST_CASE("what libharu cannot do is said in words, with its own number") {
    CHECK(said_of(HPDF_OK).empty());
    CHECK(said_of(HPDF_FAILD_TO_ALLOC_MEM) ==
          "the PDF cannot be made: out of memory (libharu error 0x1015, detail 7)");
    const struct {
        HPDF_STATUS code;
        std::string_view words;
    } cases[] = {
        {HPDF_ARRAY_COUNT_ERR, "an array has too many elements"},
        {HPDF_DICT_COUNT_ERR, "a dictionary has too many entries"},
        {HPDF_XREF_COUNT_ERR, "the document has too many objects"},
        {HPDF_REAL_OUT_OF_RANGE, "a number is too large"},
        {HPDF_NAME_OUT_OF_RANGE, "a name is too long"},
        {HPDF_STRING_OUT_OF_RANGE, "a text is too long"},
        {HPDF_INVALID_OBJECT, "an object is not as it should be"},
    };
    for (const auto& [code, words] : cases) {
        CAPTURE(words);
        CHECK(said_of(code).starts_with("the PDF cannot be made: " + std::string{words} + " ("));
    }
}

TEST_CASE("what an object cannot hold is an error, not a file without it") {
    // ISO 32000-1, Annex C, table C.1 "Architectural limits": libharu keeps to those of PDF 1.4.
    CHECK_THROWS_AS(
        file_with([](Dictionary& d) { d.ascii("Key", std::string(70'000, 'x').c_str()); }),
        PdfError);
    const std::vector<int> many(33'000, 1);
    CHECK_THROWS_AS(file_with([&](Dictionary& d) { d.array("Key").numbers(many); }), PdfError);
    CHECK_THROWS_AS(file_with([](Dictionary& d) {
                        for (int i = 0; i < 4200; ++i) {
                            d.number(("Key" + std::to_string(i)).c_str(), i);
                        }
                    }),
                    PdfError);
}

TEST_CASE("a text string is UTF-16 behind its mark, beyond U+FFFF in two units") {
    // ISO 32000-1, 7.9.2.2 "Text string type"; the units are those of the Unicode Standard 15.0,
    // table 3-5 "UTF-16 bit distribution".
    const auto text = [](std::string_view utf8) {
        return file_with([&](Dictionary& d) { d.text("Key", utf8); });
    };
    CHECK(has(text("Aé½"), "/Key <FEFF004100E900BD>"));
    CHECK(has(text("\uD7FF\uE000\uFFFF"), "/Key <FEFFD7FFE000FFFF>"));
    CHECK(has(text("\U00010000\U0001F95A\U0010FFFF"), "/Key <FEFFD800DC00D83EDD5ADBFFDFFF>"));
    CHECK(has(text(""), "/Key <FEFF>"));
}

TEST_CASE("what is put into a dictionary is spelled as PDF has it") {
    const auto bytes = file_with([](Dictionary& d) {
        d.name("Name", "Word").number("Number", -7).ascii("Ascii", "en");
        d.boolean("Yes", true).boolean("No", false);
        const std::array numbers{1, 2, 3};
        d.array("Array").number(4).real(0.5).numbers(numbers);
        d.dictionary("Inner").number("Deep", 1);
        const std::array<unsigned char, 3> raw{0, 0x7F, 0xFF};
        d.array("Raw").bytes(raw);
    });
    CHECK(has(bytes, "/Name /Word\n"));
    CHECK(has(bytes, "/Number -7\n"));
    CHECK(has(bytes, "/Ascii (en)\n"));
    CHECK(has(bytes, "/Yes true\n"));
    CHECK(has(bytes, "/No false\n"));
    CHECK(has(bytes, "/Array [ 4 0.5 [ 1 2 3"));
    CHECK(has(bytes, "/Inner <<\n/Deep 1\n>>"));
    CHECK(has(bytes, "/Raw [ <007FFF>"));
}

TEST_CASE("a stream says how long it is, and how it is packed") {
    const auto stream = [](PdfFile::Packing packing) {
        std::string bytes;
        PdfFile file{[&bytes](std::string_view piece) { bytes += piece; }};
        const auto reference = file.reserve();
        file.write_stream(reference, file.dictionary(), "q\nQ\n", packing);
        file.finish();
        return bytes;
    };
    const auto plain = stream(PdfFile::Packing::Plain);
    CHECK(has(plain, "/Length 4\n"));
    CHECK(has(plain, "\nstream\nq\nQ\n\nendstream\nendobj\n"));
    CHECK_FALSE(has(plain, "/Filter"));
    CHECK(has(stream(PdfFile::Packing::Deflated), "/Filter /FlateDecode\n"));
}

TEST_CASE("each object stands where the table says, and the table where the end says") {
    // ISO 32000-1, 7.5.4 "Cross-Reference Table": 20 bytes an entry, the first the free one.
    std::string bytes;
    PdfFile file{[&bytes](std::string_view piece) { bytes += piece; }};
    std::vector<Reference> references;
    for (int i = 0; i < 40; ++i) {
        references.push_back(file.reserve());
    }
    for (auto at = references.rbegin(); at != references.rend(); ++at) { // in any order
        auto dictionary = file.dictionary();
        dictionary.number("Number", static_cast<int>(at->number()));
        file.write(*at, dictionary);
    }
    file.finish();
    const auto told = bytes.rfind("startxref\n") + 10;
    const auto table = std::stoul(bytes.substr(told));
    const auto count = references.size() + 3; // catalog, information and the top of the pages
    const auto head = "xref\n0 " + std::to_string(count + 1) + "\n";
    REQUIRE(bytes.substr(table, head.size()) == head);
    const auto entries = table + head.size();
    CHECK(bytes.substr(entries, 20) == "0000000000 65535 f\r\n");
    for (std::size_t number = 1; number <= count; ++number) {
        CAPTURE(number);
        const auto entry = bytes.substr(entries + 20 * number, 20);
        CHECK(entry.substr(10) == " 00000 n\r\n");
        const auto begin = std::to_string(number) + " 0 obj\n";
        CHECK(bytes.substr(std::stoul(entry), begin.size()) == begin);
    }
    for (const auto& reference : references) {
        const auto number = std::to_string(reference.number());
        CHECK(has(bytes, "\n" + number + " 0 obj\n<<\n/Number " + number + "\n"));
    }
    CHECK(bytes.substr(entries + 20 * (count + 1), 8) == "trailer\n");
    CHECK(has(bytes, "/Size " + std::to_string(count + 1) + "\n"));
    CHECK(bytes.starts_with("%PDF-1.6\n%"));
}

TEST_CASE("a code stands for a glyph and its text, counted from 1 in each face") {
    const auto fonts = test_support::shipped_fonts();
    PdfFonts used{fonts};
    const auto& face = fonts.faces[0];
    const auto n = face.glyph_of(U'n');
    const auto o = face.glyph_of(U'o');
    CHECK(used.code(0, n, "n").code == 1);
    CHECK(used.code(0, o, "o").code == 2);
    CHECK(used.code(0, n, "n").code == 1);
    CHECK(used.code(0, n, "И").code == 3); // the same glyph for another text
    CHECK(used.code(0, n, "").code == 4);
    CHECK(used.code(0, n, "И").code == 3);
    CHECK(used.code(0, n, "n").code == 1);
    CHECK(used.code(1, n, "n").code == 1);
    const double em = face.advance(n) / 2048.0;
    CHECK(std::abs(used.code(0, n, "n").width - em * 1000.0) <= 0.5);
    CHECK(PdfFonts::resource_name(0) == "F0");
    CHECK(PdfFonts::resource_name(12) == "F12");
}

TEST_CASE("a face has as many codes as two bytes tell apart, and then says that it is full") {
    const auto fonts = test_support::shipped_fonts();
    PdfFonts used{fonts};
    std::uint32_t glyph = 0;
    const auto next = [&] {
        const auto text = std::to_string(glyph);
        return used.code(0, glyph++ % 500, text).code;
    };
    for (int i = 1; i < 65'535; ++i) {
        next();
    }
    CHECK(next() == 65'535);
    CHECK_THROWS_WITH_AS(
        next(), "the PDF cannot be made: more than 65535 different glyphs of one face", PdfError);
    CHECK(used.code(0, 0, "0").code == 1); // what is known stays so
    CHECK(used.code(1, 0, "0").code == 1);
}

} // namespace pdf_objects_test
