#pragma once

#include "base/geometry.h"
#include "json/value.h"

#include <cmath>

namespace thawslip::desk {

/// A length for the page: to a hundredth of a millimetre.
inline double in_millimetres(Length length) {
    return std::round(length.in_millimetres() * 100.0) / 100.0;
}
inline json::Json in_millimetres(Size size) {
    return json::Json::array({in_millimetres(size.width), in_millimetres(size.height)});
}
inline json::Json in_millimetres(Rect rect) {
    return json::Json::array({in_millimetres(rect.origin.x), in_millimetres(rect.origin.y),
                              in_millimetres(rect.size.width), in_millimetres(rect.size.height)});
}

} // namespace thawslip::desk
