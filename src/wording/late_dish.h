#pragma once

#include "kitchen/timeline/timeline.h"
#include "wording/style.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace thawslip::wording {

/// What is said of a dish that can no longer be thawed or cooked as planned.
struct LateDish {
    std::string head;                 ///< that it is too late as planned
    std::vector<std::string> ways;    ///< what can still be done, the best first, with what to mind
    std::vector<std::string> further; ///< what else holds, and last what is no longer possible
};

/// Nothing for a dish that is in time.
std::optional<LateDish> say_late_dish(const kitchen::Timeline& line,
                                      std::span<const kitchen::TimelineDish> dishes,
                                      std::size_t dish, const Style& style);

/// Whether say_late_dish says it.
bool is_of_late_dish(const kitchen::TimelineRemark& remark);

} // namespace thawslip::wording
