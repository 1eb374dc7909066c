#pragma once

#include "base/result.h"
#include "layout/layout.h"

#include <string>
#include <string_view>

namespace thawslip::layout {

/// Reads a track as a layout file writes it: "content", "share", "share 1.5", "30 %", "12 mm".
/// \returns the track, or what is wrong with the text
Result<Track, std::string> parse_track(std::string_view text);

} // namespace thawslip::layout
