#pragma once

#include "damage/photo.h"

#include <string>

// Two readers that know nothing of each other. (In files of their own: their headers clash.)
namespace thawslip::damage {

/// As `thawslip read` does: ZXing-C++ behind code::read_picture.
bool zxing_reads(const Picture& picture, const std::string& text);
bool zbar_reads(const Picture& picture, const std::string& text);

} // namespace thawslip::damage
