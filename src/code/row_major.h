#pragma once

#include <cstddef>

namespace thawslip::code {

/// Where (x, y) stands among what is kept row by row, `width` to a row. \pre neither is below 0
constexpr std::size_t row_major(int x, int y, int width) {
    return static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
           static_cast<std::size_t>(x);
}

} // namespace thawslip::code
