#pragma once

#include "base/length.h"
#include "kitchen/heat/thaw_lead.h"

#include <chrono>
#include <optional>

namespace thawslip::kitchen {

/// How long to leave a bag alone in the freezer until it is frozen through, lying there as the
/// settings place it: freezing_time() from 4 °C to −15 °C in the middle for the slab that takes as
/// long, with the settings' margin, rounded up to whole hours.
///
/// The surface coefficient is 8 W/(m² K), the low end of the 8–15 measured for meat freezing in
/// household freezers by Anderson, Sun, Erdogdu and Singh, Int. J. Refrigeration 27(1):63–72, 2004.
///
/// \returns nothing where the thickness is not known, or the freezer is not cold enough for it
std::optional<std::chrono::minutes> freezing_lead(std::optional<Length> thickness,
                                                  std::optional<Mass> weight,
                                                  const ThawSettings& settings);

} // namespace thawslip::kitchen
