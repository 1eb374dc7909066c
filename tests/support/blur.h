#pragma once

#include "support/poppler.h"

namespace thawslip::test_support {

/// A picture as an eye sees it that is too far away or not focused: each point spread by a Gaussian
/// of this many pixels (standard deviation), cut off at three of them.
Raster blurred(const Raster& picture, double sigma);

/// A part of a picture, cut off at its edges.
Raster cropped(const Raster& picture, int left, int top, int width, int height);

/// As a binary grey PGM file (Netpbm, format P5).
std::string to_pgm(const Raster& picture);

} // namespace thawslip::test_support
