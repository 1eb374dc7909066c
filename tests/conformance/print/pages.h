#pragma once

#include "layout/sheets/stock.h"
#include "support/command.h"
#include "support/poppler.h"

#include <string>

namespace thawslip::test_support {

/// Runs the program under test.
Outcome run_thawslip(const std::string& arguments);

/// All words of a PDF as Poppler reads them, a space behind each.
std::string words_in(const std::string& pdf);

inline bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

/// What ZXing-C++ reads in one cell of the raster; empty when it finds no code.
std::string read_code(const Raster& raster, const Rect& cell, int dots_per_inch);

} // namespace thawslip::test_support
