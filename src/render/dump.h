#pragma once

#include "layout/frame.h"

#include <string>

namespace thawslip::render {

/// The frame in words, for a golden test that a reviewer reads in a diff: one line an item in
/// drawing order, lengths in points to 3 decimals, x and y from the top left of the sheet.
///
///     sheet      288.000 x 144.000
///     text        12.000   20.000   9.000 ClearSans-Bold "Squash stew"
///     rule         0.000   40.000 100.000 x 0.500
///     outline     10.000   60.000   8.000 x 8.000 line 0.700 radius 1.000
///     modules    200.000   12.000  33 x 1.440 crc 89abcdef
///
/// A text's x and y are its baseline's start, then comes its size; a grid of modules is told by
/// its side, its module and a checksum of its dark ones. A second line tells the correction where
/// there is one.
std::string dump(const layout::Frame& frame, const typeset::FontSet& fonts);

} // namespace thawslip::render
