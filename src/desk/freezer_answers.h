#pragma once

#include "json/json.h"
#include "service/freezer/freezer_list.h"
#include "service/freezer/freezer_next.h"
#include "wording/style.h"

namespace thawslip::desk {

/// The freezer as ROUTES.md has it: bags, totals by dish and month.
json::Json freezer_answer(const service::FreezerList& list, kitchen::Date today,
                          const wording::Style& style);

/// How much lies where.
json::Json places_answer(std::span<const archive::Bag> bags);

/// What the page asks about the coming days. \throws BadRequest
service::NextQuestion next_question(const json::Json& body);

/// What is proposed for them, and what is not.
json::Json menu_answer(const service::Menu& menu);

} // namespace thawslip::desk
