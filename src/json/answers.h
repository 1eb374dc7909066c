#pragma once

#include "code/message.h"
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

// What commands answer to other programs, in JSON (RFC 8259): values in, text in UTF-8 out. Dates
// are ISO 8601. Members stay in the order in which they stand here; words are of the style's
// language.

/// What `check` answers, on one line: for each package its dish, its dates, the ids of its bags and
/// its cautions; then the cautions of the days themselves, and for each day what goes into the
/// freezer when; null where the freezer's size is not known; and what was said of the files. Where
/// they are refused, the lists before the messages are empty.
/// `{"packages":[{"dish","number","servings","raw","made","keep_until","basis","bags":[…],
/// "days_refrigerated","in_freezer","place","contains":[…],"may_contain":[…],"thaw",
/// "other_thaws":[…],"sides":[…],"cautions":[{"id","shown_on","text"}]}],
/// "cautions":[…],"freezers":[{"grams","limit_grams","batches":[{"day","grams","bags":[…]}],
/// "elsewhere_grams","elsewhere":[…],"too_heavy":[…],"without_weight":[…]}],
/// "messages":[{"severity","file","line","column","text","hints":[…]}]}`
/// \param days nothing where they are refused
std::string check(const service::Days* days, const service::Messages& messages,
                  const wording::Style& style);

/// What `plan` answers, on one line:
/// `{"eat","ways":[{"dish","method","begin","start","ready","text","cautions":[…]}],
/// "events":[{"at","what","dish","bags":[…],"text"}],"remarks":[{"id","severity","dish","text"}]}`
std::string plan(const service::DinnerPlan& plan, const wording::Style& style);

/// A bag's message, on one line, without its end. Keys of what the message does not say are left
/// out. `days_left` counts from `today` to the keep-until date, negative when that is past; `when`
/// is in words.
std::string message(const code::Message& message, kitchen::Date today, const wording::Style& style);

/// The same of a label whose words are all that is known of it: `{"text"}`.
std::string text(const std::string& text);

/// What `freezer list` answers: a line for each bag.
/// With `named` what of that a guest may not eat was asked about; `contains`, `may_contain` and
/// `added` are null where what is in the bag is not known any longer.
std::string freezer(std::span<const service::FoundBag> bags, kitchen::Date today,
                    const wording::Style& style);

/// What `freezer history` answers of one bag, on one line.
std::string history(const archive::Bag& bag, std::span<const archive::PastEvent> history);

/// What `freezer next` answers: a line for each day that there is a bag for.
std::string next(std::span<const service::Proposal> proposals);

/// What `foods` answers: a line for each kind of food.
std::string foods(std::span<const service::FoodFacts> facts);

} // namespace thawslip::json
