#include "spool/printer.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::spool;

TEST_CASE("papers have the names of PWG 5101.1") {
    struct Case {
        double width, height; ///< millimetres
        Feed feed;
        const char* name;
    };
    // Printer Working Group, PWG 5101.1, "Media Standardized Names 2.0" (2013), section 5 and
    // tables 4 to 6 (from memory): class, name and size of each.
    const Case cases[] = {
        {215.9, 279.4, Feed::Sheets, "na_letter_8.5x11in"},
        {279.4, 215.9, Feed::Sheets, "na_letter_8.5x11in"}, // landscape: the same sheet
        {210, 297, Feed::Sheets, "iso_a4_210x297mm"},
        {148, 210, Feed::Sheets, "iso_a5_148x210mm"},
        {105, 148, Feed::Sheets, "iso_a6_105x148mm"},
        {101.6, 152.4, Feed::Sheets, "na_index-4x6_4x6in"},
        {76.2, 127, Feed::Sheets, "na_index-3x5_3x5in"},
        {60, 100, Feed::Roll, "custom_60x100mm_60x100mm"},
        {100, 60, Feed::Roll, "custom_100x60mm_100x60mm"}, // a roll is as wide as it is
        {62.5, 33.3, Feed::Roll, "custom_62.5x33.3mm_62.5x33.3mm"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.name);
        const Size sheet{Length::millimetres(c.width), Length::millimetres(c.height)};
        CHECK(media_name(sheet, c.feed) == c.name);
    }
}
