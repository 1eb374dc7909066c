#pragma once

#include "layout/layout.h"

namespace thawslip::layout {

/// How much larger type is in large print than a layout says: 1.2 mm, the law's floor, becomes
/// 1.7 mm, and what reads comfortably at 40 cm reads so at 56 cm.
inline constexpr double large_print_size = 1.4;

/// The layout with the smallest and the comfortable x-height of all its words as much larger, and
/// the largest no less than those, and strips of rows as much wider. Of what runs on no page is
/// saved by smaller type: it would be smaller than on the pages that are not in large print.
Layout in_large_print(Layout layout);

} // namespace thawslip::layout
