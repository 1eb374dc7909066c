#pragma once

#include "code/read_picture.h"

namespace thawslip::code {

/// The picture between its four nearest pixels; grey beyond its edge.
std::uint8_t sample(const GreyPicture& picture, double x, double y);

} // namespace thawslip::code
