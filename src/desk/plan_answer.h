#pragma once

#include "json/json.h"
#include "service/dinner/dinner_plan.h"
#include "service/print/surroundings.h"
#include "service/settings.h"

namespace thawslip::desk {

/// A dinner's plan as ROUTES.md has it: what `plan --json` answers, its words, its drawing and its
/// calendar, and the messages, which those of drawing are added to.
/// \param beside how many dishes a picture shows side by side at most
json::Json plan_answer(const service::DinnerPlan& plan, std::size_t beside,
                       service::Messages messages, const service::Settings& settings,
                       const service::Surroundings& around);

} // namespace thawslip::desk
