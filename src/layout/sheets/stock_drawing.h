#pragma once

#include "base/result.h"
#include "layout/frame.h"
#include "layout/sheets/stock.h"
#include "typeset/face.h"

#include <string>

namespace thawslip::layout {

/// The smallest page that has room for the drawing and its words: A5.
inline constexpr Size smallest_drawing_page{Length::millimetres(148), Length::millimetres(210)};

/// The stock drawn to a round scale on a page of its own, with its cells numbered as they are
/// filled, the safe area of the first, its crop marks, and its dimensions, each a letter in
/// the drawing and a line below it.
/// \pre check_geometry(stock) finds nothing
/// \returns the drawing; or why there is none, in words: a page that is too small, a character
/// of the stock's name that the faces lack
Result<Frame, std::string> stock_drawing(const Stock& stock, Size page,
                                         const typeset::FontSet& fonts);

} // namespace thawslip::layout
