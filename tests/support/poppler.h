#pragma once

#include "base/geometry.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace thawslip::test_support {

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

/// A page in shades of grey, row by row from the top: 0 is black, 255 white.
struct Raster {
    int width = 0, height = 0;
    std::vector<std::uint8_t> pixels;

    std::uint8_t at(int x, int y) const {
        return pixels[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                      static_cast<std::size_t>(x)];
    }
};

/// The picture in the bytes of a binary grey PGM file (Netpbm, format P5).
/// \throws std::runtime_error when they hold none
Raster raster_from_pgm(const std::string& bytes);

/// A page, counted from 1, as `pdftoppm -gray` (Poppler) draws it.
Raster rasterise(const std::string& pdf, int page, int dots_per_inch);

} // namespace thawslip::test_support
