#pragma once

#include "code/recover/anchor.h"
#include "code/recover/seen_modules.h"

#include <optional>
#include <vector>

namespace thawslip::code {

/// The modules of a symbol, of which two finder patterns or more were found. From these on it feels
/// its way, a few modules at a time: where the next are is foretold by those that are known, and
/// then moved to where the picture parts them best. So neither a bent label nor one held askew
/// leads it astray, and what is hidden is crossed on what is around it.
/// \param picture evenly lit
/// \returns nothing where what is known of every symbol of this version is not seen there
std::optional<SeenModules> seen_from(const GreyPicture& picture, const std::vector<Anchor>& anchors,
                                     int version);

} // namespace thawslip::code
