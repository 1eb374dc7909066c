#pragma once

#include "layout/stock.h"
#include "support/command.h"

#include <cstdint>
#include <string>
#include <vector>

namespace thawslip::test_support {

/// Runs the program under test.
Outcome run_thawslip(const std::string& arguments);

/// A word of a page as Poppler finds it, in points from the page's top left corner.
struct Word {
    std::string text;
    double left, top, right, bottom;
};
struct Page {
    double width, height; ///< points
    std::vector<Word> words;
};
/// The pages of a PDF by `pdftotext -raw -bbox` (Poppler): words in the order they are drawn.
std::vector<Page> read_pages(const std::string& pdf);

/// The words of a page whose middle lies in `cell`, as drawn, with single spaces between.
std::string words_in(const Page& page, const Rect& cell);

/// A page as `pdftoppm -gray` (Poppler) rasterises it.
struct Raster {
    int width = 0, height = 0;
    std::vector<std::uint8_t> pixels;
};
Raster rasterise(const std::string& pdf, int page, int dots_per_inch);

/// What ZXing-C++ reads in one cell of the raster; empty when it finds no code.
std::string read_code(const Raster& raster, const Rect& cell, int dots_per_inch);

} // namespace thawslip::test_support
