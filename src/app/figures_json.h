#pragma once

#include "kitchen/day.h"

#include <chrono>
#include <optional>
#include <string>

namespace thawslip::app {

/// The members of a JSON object that say how a bag is thawed, each with a comma before it:
/// `look_from_minutes`, `thaw_minutes` (what to allow) and `cook_within_days`. Those that are not
/// known are left out, so that none is mistaken for 0.
std::string thaw_members(const std::optional<kitchen::TimeRange>& thaw_time,
                         const std::optional<std::chrono::days>& cook_within);

} // namespace thawslip::app
