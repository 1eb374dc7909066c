#pragma once

#include "code/message.h"
#include "json/json.h"
#include "kitchen/date.h"
#include "service/days.h"
#include "service/dinner/dinner_plan.h"
#include "service/food_facts.h"
#include "service/freezer/freezer_list.h"
#include "service/freezer/freezer_next.h"
#include "service/messages.h"
#include "wording/style.h"

#include <span>
#include <string>

namespace thawslip::json {

// What is answered to other programs and to the page, as values of JSON (RFC 8259). Dates are ISO
// 8601. Members stay in the order in which they stand here; words are of the style's language.

/// What `check` answers: for each package its dish, its dates, the ids of its bags and its
/// cautions; then the cautions of the days themselves, and for each day what goes into the freezer
/// when; null where the freezer's size is not known; and what was said of the files. Where they are
/// refused, the lists before the messages are empty.
/// `{"packages":[{"dish","number","servings","raw","made","keep_until","basis","bags":[…],
/// "days_refrigerated","in_freezer","place","contains":[…],"may_contain":[…],"thaw",
/// "other_thaws":[…],"sides":[…],"cautions":[{"id","shown_on","text"}]}],
/// "cautions":[…],"freezers":[{"grams","limit_low_grams","limit_grams",
/// "batches":[{"day","grams","bags":[…]}],"elsewhere_grams","elsewhere":[…],"too_heavy":[…],
/// "without_weight":[…]}],
/// "messages":[{"severity","file","line","column","text","hints":[…]}]}`
/// \param days nothing where they are refused
Json check_json(const service::Days* days, const service::Messages& messages,
                const wording::Style& style);

/// What `plan` answers:
/// `{"eat","ways":[{"dish","method","begin","start","ready","text","cautions":[…]}],
/// "events":[{"at","what","dish","bags":[…],"text"}],"remarks":[{"id","severity","dish","events":[…],"text"}]}`;
/// a remark's `events` are the places of those at which it is to be minded; none: before all
Json plan_json(const service::DinnerPlan& plan, const wording::Style& style);

/// A bag's message. Keys of what the message does not say are left out. `days_left` counts from
/// `today` to the keep-until date, negative when that is past; `when` is in words.
Json message_json(const code::Message& message, kitchen::Date today, const wording::Style& style);

/// The same of a label whose words are all that is known of it: `{"text"}`.
Json text_json(const std::string& text);

/// What `freezer list` answers: an element for each bag.
/// With `named` what of that a guest may not eat was asked about; `contains`, `may_contain` and
/// `added` are null where what is in the bag is not known any longer.
Json freezer_json(std::span<const service::FoundBag> bags, kitchen::Date today,
                  const wording::Style& style);

/// What `freezer history` answers of one bag.
Json history_json(const archive::Bag& bag, std::span<const archive::PastEvent> history);

/// What `freezer next` answers: an element for each day that there is a bag for.
Json next_json(std::span<const service::Proposal> proposals);

/// What `foods` answers: an element for each kind of food.
Json foods_json(std::span<const service::FoodFacts> facts);

} // namespace thawslip::json
