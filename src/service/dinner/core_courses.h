#pragma once

#include "kitchen/heat/core_course.h"
#include "service/dinner/dinner_plan.h"

#include <vector>

namespace thawslip::service {

/// How warm the middle of a dish's bags is while they thaw and wait, from the moment at which a
/// plan has them begin until cooking begins, or the meal.
struct CoreCourse {
    std::size_t dish = 0; ///< index of the plan's dish
    kitchen::ThawMethod method = kitchen::ThawMethod::Refrigerator;
    kitchen::Instant begins;
    double medium = 0.0; ///< °C, of what surrounds them
    std::vector<kitchen::CorePoint> points;
};

/// One for each dish that thaws in the refrigerator or in water, as planned or by the first of the
/// faster ways; none for a dish that cannot be done any longer.
/// \param thaw as the plan was asked with
std::vector<CoreCourse> core_courses(const DinnerPlan& plan, const kitchen::ThawSettings& thaw);

} // namespace thawslip::service
