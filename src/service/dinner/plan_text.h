#pragma once

#include "service/dinner/dinner_plan.h"

#include <string>
#include <string_view>

namespace thawslip::service {

/// What stands before a remark: "note", "caution", "cannot be done".
std::string_view weight_word(kitchen::RemarkWeight weight);

/// A plan as the cook reads it. Where a dish is late, what can still be done comes first, and then
/// what no longer can.
std::string plan_text(const service::DinnerPlan& plan, const wording::Style& style);

} // namespace thawslip::service
