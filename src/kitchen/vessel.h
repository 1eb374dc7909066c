#pragma once

#include "kitchen/day.h"

#include <string_view>

namespace thawslip::kitchen {

/// The vessel that free words name: "my big slow cooker" is a slow cooker, "Dutch oven" a pot.
/// Whole words only, in any letter case; where several are named, the one whose rules are the
/// more particular (a "slow cooker or pot" is a slow cooker).
Vessel vessel_of(std::string_view words);

} // namespace thawslip::kitchen
