#pragma once

#include "kitchen/day.h"

#include <optional>
#include <string>
#include <string_view>

namespace thawslip::intake {

/// The vessel meant by free words: "my big slow-cooker" is a slow cooker, a "Dutch oven" a pot.
/// `Other` where none of the words is known.
kitchen::Vessel vessel_of(std::string_view words);

/// The known vessel that was probably meant by words that `vessel_of` does not know: "slow coker".
/// Cooking rules hang on the vessel, so a slip of the finger must not switch them off in silence.
std::optional<std::string> nearest_vessel(std::string_view words);

} // namespace thawslip::intake
