// Other programs read what was written: the words come out, and nobody has anything to remark.
#include "written.h"

#include <doctest/doctest.h>
#include <sstream>

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("Poppler extracts every word as it was written, and has no remark") {
    const WordsFile written;
    const auto text = run("pdftotext -layout " + shell_word(written.file) + " -");
    CHECK(text.err.empty());
    for (const auto& line : demanding_lines()) {
        CAPTURE(text.out);
        CHECK(has(text.out, line));
    }
    CHECK(has(text.out, "SQUASH STEW"));
    CHECK(run("pdftoppm -r 100 " + shell_word(written.file)).err.empty());
    const auto info = run("pdfinfo " + shell_word(written.file));
    CHECK(info.err.empty());
    CHECK(has(info.out, "Wörds (one \\ two)"));
}

TEST_CASE("MuPDF and Ghostscript extract the same words") {
    const WordsFile written;
    const auto mupdf = run("mutool draw -q -F text -o - " + shell_word(written.file));
    const auto ghostscript =
        run("gs -q -dNOPAUSE -dBATCH -sDEVICE=txtwrite -sOutputFile=- " + shell_word(written.file));
    for (const char* words : {"Crème brûlée, ½ l, 74 °C, ǻ, Ω, жир", "office, flat, fi fl ffi",
                              "plain-old", "SQUASH STEW"}) {
        CAPTURE(std::string{words});
        CHECK(has(mupdf.out, words));
        // Ghostscript writes a ligature as one character where its text stands for two letters.
        CHECK((has(ghostscript.out, words) || std::string{words}.find("fi") != std::string::npos));
    }
}

TEST_CASE("all faces are embedded subsets with their text, of the kind that ISO 32000 names") {
    const WordsFile written;
    const auto fonts = run("pdffonts " + shell_word(written.file));
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
        const WordsFile written{pages};
        const auto check = run("qpdf --check " + shell_word(written.file));
        CAPTURE(check.out);
        CHECK(check.err.empty());
        CHECK(check.status == 0);
        CHECK(run("qpdf --show-npages " + shell_word(written.file)).out ==
              std::to_string(pages) + "\n");
    }
}

TEST_CASE("MuPDF and Ghostscript draw it without a warning") {
    const WordsFile written{2};
    const auto mupdf = run("mutool draw -q -r 72 -o /dev/null -F pnm " + shell_word(written.file));
    CHECK(mupdf.status == 0);
    // Debian's MuPDF is built without colour management, and says so.
    CHECK((mupdf.err.empty() || mupdf.err == "warning: ICC support is not available\n"));
    const auto cleaned = run("mutool clean " + shell_word(written.file) + " " +
                             shell_word(written.folder / "clean.pdf"));
    CHECK(cleaned.status == 0);
    CHECK(cleaned.err.empty());
    const auto ghostscript = run("gs -dPDFSTOPONERROR -dPDFSTOPONWARNING -dNOPAUSE -dBATCH "
                                 "-sDEVICE=nullpage " +
                                 shell_word(written.file));
    CAPTURE(ghostscript.out);
    CHECK(ghostscript.status == 0);
    CHECK(ghostscript.err.empty());
    CHECK_FALSE(has(ghostscript.out, "rror"));
    CHECK_FALSE(has(ghostscript.out, "arning"));
}
