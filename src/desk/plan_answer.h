#pragma once

#include "json/json.h"
#include "service/dinner/dinner_plan.h"
#include "service/print/surroundings.h"
#include "service/settings.h"

namespace thawslip::desk {

/// A dinner's plan as ROUTES.md has it: what `plan --json` answers, its words, its drawing and its
/// calendar, and the messages, which those of drawing are added to.
json::Json plan_answer(const service::DinnerPlan& plan, service::Messages messages,
                       const service::Settings& settings, const service::Surroundings& around);

} // namespace thawslip::desk
