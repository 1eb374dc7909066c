#pragma once

#include "code/read_picture.h"

#include <optional>
#include <string>

namespace thawslip::code {

/// The text of one of Thawslip's own codes of which so much is hidden that a plain reader gives up:
/// also one finder pattern of its three, and modules up to nearly twice what its level restores
/// where it shows which are doubtful. Two finder patterns that stand as those of one code are
/// enough to try. Takes some tens of milliseconds for each two of them.
/// \param picture evenly lit, ink darker than half
/// \param modules how many are felt for at most, of all symbols that there may be: 60 000 take a
/// second
std::optional<std::string> recovered(const GreyPicture& picture, int modules);

} // namespace thawslip::code
