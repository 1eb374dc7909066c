#pragma once

#include "layout/frame.h"

#include <string>

namespace thawslip::layout {

/// 32 hexadecimal digits that are the same for frames that are drawn the same with one set of
/// faces, and of two others by chance once in 2^64 and more: to know a drawing by, no protection
/// against whoever wants two to be taken for one.
std::string fingerprint(const Frame& frame);

} // namespace thawslip::layout
