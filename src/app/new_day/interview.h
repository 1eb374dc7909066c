#pragma once

#include "app/question.h"
#include "service/new_day/new_day_text.h"
#include "wording/language.h"

#include <vector>

namespace thawslip::app {

/// Asks how many dishes there are, unless that is known, and then for each what it is called, how
/// many it serves, in how many bags, its kind of food, weight and thickness. An empty answer leaves
/// the value to be filled in; a number that cannot be is asked for again. Where no more answers
/// come, the rest is empty.
/// \param count of the dishes; 0: ask
std::vector<service::NewDish> ask_dishes(const Ask& ask, int count,
                                         const wording::Language& language);

} // namespace thawslip::app
