// Paper sizes against names and sizes that others publish.

#include "layout/files/stock_file.h"
#include "layout/sheets/paper.h"

#include <array>
#include <charconv>
#include <cmath>
#include <doctest/doctest.h>
#include <string>

namespace thawslip::layout {
namespace {

/// The size that a PWG 5101.1 self-describing media name states at its end: "…_210x297mm".
Size size_stated_by(std::string_view name) {
    const auto stated = name.substr(name.rfind('_') + 1);
    const bool inches = stated.ends_with("in");
    double width = 0;
    double height = 0;
    const char* const end = stated.data() + stated.size() - 2;
    const auto read = std::from_chars(stated.data(), end, width);
    REQUIRE(*read.ptr == 'x');
    REQUIRE(std::from_chars(read.ptr + 1, end, height).ptr == end);
    return inches ? Size{Length::inches(width), Length::inches(height)}
                  : Size{Length::millimetres(width), Length::millimetres(height)};
}

void check_equal(Size a, Size b) {
    CHECK(std::abs((a.width - b.width).in_millimetres()) < 0.01);
    CHECK(std::abs((a.height - b.height).in_millimetres()) < 0.01);
}

} // namespace

// OpenPrinting CUPS, cups/pwg-media.c, table cups_pwg_media (2025): names of PWG 5101.1, Media
// Standardized Names, with width and length in hundredths of a millimetre.
TEST_CASE("every paper has the name and the size that printers know it by") {
    struct Row {
        const char* name;
        const char* ipp_name;
        int width, length; ///< 2540ths of an inch
    };
    constexpr std::array table{
        Row{"3x5in", "na_index-3x5_3x5in", 7620, 12700},
        Row{"4x6in", "na_index-4x6_4x6in", 10160, 15240},
        Row{"5x7in", "na_5x7_5x7in", 12700, 17780},
        Row{"5x8in", "na_index-5x8_5x8in", 12700, 20320},
        Row{"letter", "na_letter_8.5x11in", 21590, 27940},
        Row{"legal", "na_legal_8.5x14in", 21590, 35560},
        Row{"a7", "iso_a7_74x105mm", 7400, 10500},
        Row{"a6", "iso_a6_105x148mm", 10500, 14800},
        Row{"a5", "iso_a5_148x210mm", 14800, 21000},
        Row{"a4", "iso_a4_210x297mm", 21000, 29700},
        Row{"a3", "iso_a3_297x420mm", 29700, 42000},
    };
    CHECK(papers().size() == table.size());
    for (const auto& row : table) {
        CAPTURE(row.name);
        const auto size = paper_size(row.name);
        REQUIRE(size.has_value());
        CHECK(size->width.in_points() == doctest::Approx(row.width * 72.0 / 2540));
        CHECK(size->height.in_points() == doctest::Approx(row.length * 72.0 / 2540));
        REQUIRE(paper_of(*size) != nullptr);
        CHECK(paper_of(*size)->name == row.name);
        CHECK(paper_of(*size)->ipp_name == row.ipp_name);
        check_equal(*size, size_stated_by(row.ipp_name));
    }
}

// ISO 216:2007, clause on the A series (from memory): A0 has 1 m², sides as 1 to √2; each next
// size is the half of the one before, rounded down to whole millimetres.
TEST_CASE("the A papers follow from one square metre by halving") {
    int width = static_cast<int>(std::lround(1000 / std::pow(2, 0.25)));
    int height = static_cast<int>(std::lround(1000 * std::pow(2, 0.25)));
    CHECK(width == 841);
    CHECK(height == 1189);
    for (int number = 1; number <= 7; ++number) {
        const int half = height / 2;
        height = width;
        width = half;
        if (number >= 3) {
            const auto size = paper_size("a" + std::to_string(number));
            REQUIRE(size.has_value());
            check_equal(*size, {Length::millimetres(width), Length::millimetres(height)});
        }
    }
}

// Adobe, PostScript and PDF page sizes in points, as commonly tabled (from memory): Letter
// 612 x 792; A4 595.276 x 841.89.
TEST_CASE("US Letter and A4 have the points that everybody prints with") {
    CHECK(paper_size("letter")->width.in_points() == doctest::Approx(612));
    CHECK(paper_size("letter")->height.in_points() == doctest::Approx(792));
    CHECK(paper_size("a4")->width.in_points() == doctest::Approx(595.2756));
    CHECK(paper_size("a4")->height.in_points() == doctest::Approx(841.8898));
}

TEST_CASE("paper may lie on its side, and other names are no paper") {
    check_equal(*paper_size("a6 landscape"), {Length::millimetres(148), Length::millimetres(105)});
    CHECK(paper_of(*paper_size("a6 landscape"))->name == "a6");
    for (const char* name : {"", "A4", "a4 ", "landscape", " landscape", "a4 portrait", "b5"}) {
        CHECK_FALSE(paper_size(name).has_value());
    }
    CHECK(paper_of({Length::millimetres(100), Length::millimetres(100)}) == nullptr);
}

} // namespace thawslip::layout
