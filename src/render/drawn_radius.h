#pragma once

#include "layout/frame.h"

#include <algorithm>

namespace thawslip::render {

/// The radius that an outline's corners are drawn with: two corners of a side cannot take more
/// than the side. 0 for square ones.
inline Length drawn_radius(const layout::Outline& outline) {
    const auto& size = outline.area.size;
    return std::clamp(outline.corner_radius, Length{},
                      std::max(Length{}, std::min(size.width, size.height) / 2));
}

} // namespace thawslip::render
