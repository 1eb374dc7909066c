// The modules of a code fall on printer dots: no dot is half inked, and each module is as many
// dots wide as the next (ISO/IEC 15415 grades a symbol down for both; DENSO WAVE, QRcode.com,
// "Point for setting the module size": whole dots, four or more of them).
#include "pictures.h"
#include "render/pdf.h"
#include "support/command.h"
#include "support/random.h"
#include "support/shipped_fonts.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

struct Placed {
    layout::Frame frame;
    layout::ModuleGrid grid;
    int left, top; ///< dots
    int module;    ///< dots
};

/// Random modules at whole dots of a printer.
Placed place(int dots_per_inch, int left, int top, int module, test_support::Random& random) {
    Placed placed{{}, {}, left, top, module};
    placed.grid.side = 57; // version 10
    for (int i = 0; i < 57 * 57; ++i) {
        placed.grid.dark.push_back(random.chance(2));
    }
    const auto dots = [dots_per_inch](int n) {
        return Length::inches(static_cast<double>(n) / dots_per_inch);
    };
    placed.grid.top_left = {dots(left), dots(top)};
    placed.grid.module = dots(module);
    placed.frame.sheet = {Length::inches(4), Length::inches(3)};
    placed.frame.items.push_back(placed.grid);
    return placed;
}

struct Found {
    int grey = 0;
    int wrong = 0;
};

Found compare(const Raster& page, const Placed& placed) {
    Found found;
    const int side = placed.grid.side * placed.module;
    for (int y = -placed.module; y < side + placed.module; ++y) {
        for (int x = -placed.module; x < side + placed.module; ++x) {
            const bool inside = x >= 0 && y >= 0 && x < side && y < side;
            const bool dark =
                inside && placed.grid.dark[static_cast<std::size_t>(
                              y / placed.module * placed.grid.side + x / placed.module)];
            const auto shade = page.at(placed.left + x, placed.top + y);
            found.grey += shade != 0 && shade != 255 ? 1 : 0;
            found.wrong += (shade < 128) != dark ? 1 : 0;
        }
    }
    return found;
}

} // namespace

TEST_CASE("on the dot grid every dot is black or white, and the right one, in all readers") {
    const auto fonts = shipped_fonts();
    test_support::Random random{300};
    struct Case {
        int dots_per_inch, left, top, module;
    };
    const Case cases[] = {{300, 40, 37, 5}, {300, 101, 300, 6}, {300, 10, 10, 4},
                          {203, 33, 17, 4}, {600, 301, 77, 11}, {360, 15, 17, 7}};
    for (const auto& c : cases) {
        CAPTURE(c.dots_per_inch);
        CAPTURE(c.module);
        const auto placed = place(c.dots_per_inch, c.left, c.top, c.module, random);
        const ScratchFolder folder;
        const auto file = folder / "code.pdf";
        write_file(file, render::pdf({placed.frame}, fonts, {"Code", "en", {}}));
        const auto dots = std::to_string(c.dots_per_inch);
        const std::pair<const char*, Raster> readers[] = {
            {"Poppler", rasterise(file, 1, c.dots_per_inch)},
            {"MuPDF", raster_from_pgm(run("mutool draw -q -c gray -F pgm -r " + dots + " -o - " +
                                          shell_word(file) + " 1")
                                          .out)},
            {"Ghostscript", raster_from_pgm(run("gs -q -dNOPAUSE -dBATCH -sDEVICE=pgmraw "
                                                "-dGraphicsAlphaBits=4 -sOutputFile=- -r" +
                                                dots + " " + shell_word(file))
                                                .out)},
            {"librsvg", svg_picture(placed.frame, fonts, c.dots_per_inch)},
        };
        for (const auto& [reader, page] : readers) {
            CAPTURE(std::string{reader});
            const auto found = compare(page, placed);
            CHECK(found.grey == 0);
            CHECK(found.wrong == 0);
        }
    }
}

TEST_CASE("the comparison notices a grid that is half a dot off") {
    const auto fonts = shipped_fonts();
    test_support::Random random{1};
    auto placed = place(300, 40, 37, 5, random);
    std::get<layout::ModuleGrid>(placed.frame.items[0]).top_left.x += Length::inches(0.5 / 300);
    CHECK(compare(pdf_picture(placed.frame, fonts, 300), placed).grey > 500);
}
