#pragma once

#include "service/dinner/dinner_plan.h"
#include "service/print/printing.h"

namespace thawslip::service {

/// A dinner's plan drawn to scale, on as few sheets as its words are comfortable on: on each as
/// many dishes side by side as it is wide enough for. Where no sheet can hold a dish, its plan runs
/// on. Refused where nothing of the plan can be done, and where its words fit no sheet.
Outcome<Printing> plan_sheet(const DinnerPlan& plan, const Look& look, const Settings& settings,
                             const Surroundings& around);

/// The same for a screen: in pictures of one size, as wide as so many dishes side by side are
/// comfortable in, or all where they are fewer. Other dishes stand in the next one.
/// \param beside 1 to 3
Outcome<Printing> plan_pictures(const DinnerPlan& plan, std::size_t beside,
                                const Settings& settings, const Surroundings& around);

} // namespace thawslip::service
