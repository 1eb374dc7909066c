// thawslip stock: a stock in words, drawn, and the ruler. US Letter is 8.5 × 11 in, 612 × 792
// points (ANSI/ASME Y14.1, from memory).

#include "support/command.h"

#include <doctest/doctest.h>
#include <filesystem>

namespace stock_test {

using namespace thawslip::test_support;

namespace {

struct Folder {
    ScratchFolder folder;

    Outcome stock(const std::string& words) const {
        return run("cd " + shell_word(folder.path().string()) +
                   "; XDG_CONFIG_HOME=/nonexistent " THAWSLIP_PROGRAM " stock " + words);
    }
};

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE_FIXTURE(Folder, "a stock is said in words, and drawn only where that is asked for") {
    const auto said = stock("show letter-2x5-4x2in");
    CHECK(said.status == 0);
    CHECK(
        has(said.out, "10 cells in 2 columns and 5 rows, counted along rows from the top left.\n"));
    CHECK(std::filesystem::is_empty(folder.path()));
    const auto drawn = stock("show letter-2x5-4x2in -o sheet.svg");
    CHECK(drawn.out == said.out);
    const auto svg = read_file(folder / "sheet.svg");
    CHECK(has(svg, "<svg "));
    CHECK(has(svg, "viewBox=\"0 0 612 792\""));
    REQUIRE(stock("show letter-2x5-4x2in -o sheet.pdf").status == 0);
    CHECK(has(read_file(folder / "sheet.pdf"), "/MediaBox [ 0 0 612 792 ]"));
}

TEST_CASE_FIXTURE(Folder, "a drawing that goes to the output is all that goes there") {
    const auto drawn = stock("show letter-2x5-4x2in -o -");
    CHECK(drawn.status == 0);
    CHECK(drawn.out.starts_with("%PDF-"));
    CHECK(drawn.out.ends_with("%%EOF\n"));
    const auto ruler = stock("ruler --paper letter -o -");
    CHECK(ruler.status == 0);
    CHECK(ruler.out.starts_with("%PDF-"));
    CHECK(ruler.out.ends_with("%%EOF\n"));
}

TEST_CASE_FIXTURE(Folder, "what is no stock, and no paper, is refused with what comes near") {
    const auto none = stock("show letter-2x5-4x2im -o sheet.pdf");
    CHECK(none.status == 1);
    CHECK(has(none.err, "letter-2x5-4x2in"));
    CHECK_FALSE(has(stock("ruler --help").out, ".txt")); // what is refused is not promised
    CHECK(stock("ruler -o ruler.txt").status == 2);
    CHECK(stock("ruler --paper a9 -o ruler.pdf").status != 0);
    CHECK(std::filesystem::is_empty(folder.path()));
}

} // namespace stock_test
