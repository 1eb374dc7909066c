#pragma once

#include "base/length.h"

#include <cmath>

namespace thawslip::layout {

/// How far from the eye letters of this x-height are still read at full speed: where the x is seen
/// under 0.2 degrees. Legge and Bigelow, Does print size matter for reading?, Journal of Vision
/// 11(5):8, 2011.
inline Length fluent_distance(Length x_height) {
    constexpr double half_angle = 0.1 * 3.14159265358979323846 / 180.0;
    return x_height / (2.0 * std::tan(half_angle));
}

/// Where a reader has what is written.
enum class ReadAt {
    ArmsLength, ///< from 60 cm on
    Hand,       ///< from 35 cm on
    Close,
};

/// The same in whole centimetres, and where that is; common practice, no source.
inline int fluent_centimetres(Length x_height) {
    return static_cast<int>(std::lround(fluent_distance(x_height).in_millimetres() / 10.0));
}
inline ReadAt read_at(int centimetres) {
    return centimetres >= 60   ? ReadAt::ArmsLength
           : centimetres >= 35 ? ReadAt::Hand
                               : ReadAt::Close;
}

} // namespace thawslip::layout
