// Other programs read what was written: the words come out, and nobody has anything to remark.
#include "layout/pen.h"
#include "render/pdf.h"
#include "support/command.h"
#include "support/poppler.h"
#include "support/shipped_fonts.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::literals;
using namespace thawslip::test_support;

namespace {

/// A line each; the second has a glyph that stands for "-" and for U+2011, the third one for
/// GREEK SMALL LETTER MU and MICRO SIGN in many faces.
const char* const lines[] = {
    "Crème brûlée, ½ l, 74 °C, ǻ, Ω, жир",
    "a no‑break hyphen, a plain-old hyphen, a no‑break one again",
    "5 µm of μ; ohm Ω; 3–3½ h — “done”",
    "office, flat, fi fl ffi: ligatures",
    "x̂ and q̃: marks on letters",
    "☐ 200 g baby spinach (small) [bag] \\ 100 %",
};

layout::Frame words_sheet(const typeset::FontSet& fonts) {
    layout::Frame frame;
    frame.sheet = {6_in, 4_in};
    layout::Pen pen{frame, fonts};
    Length y = 40_pt;
    for (const char* line : lines) {
        pen.write(line, {20_pt, y}, {11_pt});
        y += 24_pt;
    }
    pen.write("SQUASH STEW", {20_pt, y}, {20_pt, typeset::Weight::Bold});
    REQUIRE_FALSE(pen.fault());
    return frame;
}

struct Written {
    ScratchFolder folder;
    std::string file = folder / "words.pdf";

    explicit Written(int pages) {
        const auto fonts = shipped_fonts();
        const std::vector<layout::Frame> frames(static_cast<std::size_t>(pages),
                                                words_sheet(fonts));
        write_file(file, render::pdf(frames, fonts, {"Wörds (one \\ two)", "en", {}}));
    }
};

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("Poppler extracts every word as it was written, and has no remark") {
    const Written written{1};
    const auto text = run("pdftotext -layout " + quoted(written.file) + " -");
    CHECK(text.err.empty());
    for (const char* line : lines) {
        CAPTURE(text.out);
        CHECK(has(text.out, line));
    }
    CHECK(has(text.out, "SQUASH STEW"));
    CHECK(run("pdftoppm -r 100 " + quoted(written.file)).err.empty());
    const auto info = run("pdfinfo " + quoted(written.file));
    CHECK(info.err.empty());
    CHECK(has(info.out, "Wörds (one \\ two)"));
}

TEST_CASE("MuPDF and Ghostscript extract the same words") {
    const Written written{1};
    const auto mupdf = run("mutool draw -q -F text -o - " + quoted(written.file));
    const auto ghostscript =
        run("gs -q -dNOPAUSE -dBATCH -sDEVICE=txtwrite -sOutputFile=- " + quoted(written.file));
    for (const char* words : {"Crème brûlée, ½ l, 74 °C, ǻ, Ω, жир", "office, flat, fi fl ffi",
                              "plain-old", "SQUASH STEW"}) {
        CAPTURE(words);
        CHECK(has(mupdf.out, words));
        CHECK(has(ghostscript.out, words));
    }
}

TEST_CASE("all faces are embedded subsets with their text, of the kind that ISO 32000 names") {
    const Written written{1};
    const auto fonts = run("pdffonts " + quoted(written.file));
    CHECK(fonts.err.empty());
    std::istringstream rows{fonts.out};
    std::string row;
    int faces = 0;
    for (int n = 0; std::getline(rows, row); ++n) {
        if (n >= 2) {
            ++faces;
            CAPTURE(row);
            CHECK(row.find('+') == 6); // ISO 32000-1, 9.6.4 "Font Subsets": six letters and a plus
            CHECK(has(row, "CID TrueType      Identity-H       yes yes yes"));
        }
    }
    CHECK(faces == 3); // regular, bold and the fallback
}

TEST_CASE("qpdf finds nothing wrong, in one page and in hundreds") {
    for (const int pages : {1, 250}) {
        const Written written{pages};
        const auto check = run("qpdf --check " + quoted(written.file));
        CAPTURE(check.out);
        CHECK(check.err.empty());
        CHECK(check.status == 0);
        CHECK(run("qpdf --show-npages " + quoted(written.file)).out ==
              std::to_string(pages) + "\n");
    }
}

TEST_CASE("MuPDF and Ghostscript draw it without a warning") {
    const Written written{2};
    const auto mupdf = run("mutool draw -q -r 72 -o /dev/null -F pnm " + quoted(written.file));
    CHECK(mupdf.status == 0);
    CHECK(mupdf.err.empty());
    const auto cleaned =
        run("mutool clean " + quoted(written.file) + " " + quoted(written.folder / "clean.pdf"));
    CHECK(cleaned.status == 0);
    CHECK(cleaned.err.empty());
    const auto ghostscript = run("gs -dPDFSTOPONERROR -dPDFSTOPONWARNING -dNOPAUSE -dBATCH "
                                 "-sDEVICE=nullpage " +
                                 quoted(written.file));
    CAPTURE(ghostscript.out);
    CHECK(ghostscript.status == 0);
    CHECK(ghostscript.err.empty());
    CHECK_FALSE(has(ghostscript.out, "rror"));
    CHECK_FALSE(has(ghostscript.out, "arning"));
}

TEST_CASE("the font descriptor tells the truth about the face") {
    // ISO 32000-1, Table 122 "Entries common to all font descriptors".
    const Written written{1};
    const auto plain =
        run("qpdf --qdf --object-streams=disable " + quoted(written.file) + " -").out;
    CHECK(has(plain, "/Type /FontDescriptor"));
    CHECK(has(plain, "/CIDToGIDMap"));
    CHECK(has(plain, "/CIDSystemInfo"));
    CHECK(has(plain, "/Subtype /CIDFontType2"));
    CHECK(has(plain, "/PrintScaling /None"));
    CHECK(has(plain, "/Lang (en)"));
}
