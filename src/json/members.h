#pragma once

#include "json/json.h"
#include "kitchen/day.h"

#include <chrono>
#include <optional>

namespace thawslip::json {

/// Adds how a bag is thawed: `look_from_minutes`, `thaw_minutes` (what to allow) and
/// `cook_within_days`. What is not known is left out, so that none is mistaken for 0.
void add_thaw(Json& object, const std::optional<kitchen::TimeRange>& thaw_time,
              const std::optional<std::chrono::days>& cook_within);

} // namespace thawslip::json
