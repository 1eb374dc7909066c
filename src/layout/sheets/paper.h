#pragma once

#include "base/geometry.h"

#include <optional>
#include <span>
#include <string_view>

namespace thawslip::layout {

/// A paper of standard size, upright.
struct Paper {
    std::string_view name;     ///< as stock files and settings write it: "a4"
    std::string_view ipp_name; ///< what printers call it: "iso_a4_210x297mm"
    Size size;
};

/// The papers that have a name here, large to small. Sizes of the A series: ISO 216; names for
/// printers: PWG 5101.1 "Media Standardized Names", which carry the size themselves.
std::span<const Paper> papers();

/// "a4" or "a4 landscape"; nothing for a name that papers() lacks.
std::optional<Size> paper_size(std::string_view name);

/// The paper of this size, upright or on its side; nullptr when it has no name.
const Paper* paper_of(Size size);

} // namespace thawslip::layout
