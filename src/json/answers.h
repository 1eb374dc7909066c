#pragma once

#include "json/values.h"

namespace thawslip::json {

// What commands answer to other programs, as texts in UTF-8: the values of values.h, each on one
// line without its end, or a list with an element on each line.

std::string check(const service::Days* days, const service::Messages& messages,
                  const wording::Style& style);
std::string plan(const service::DinnerPlan& plan, const wording::Style& style);
std::string message(const code::Message& message, kitchen::Date today, const wording::Style& style);
std::string text(const std::string& text);
std::string freezer(std::span<const service::FoundBag> bags, kitchen::Date today,
                    const wording::Style& style);
std::string history(const archive::Bag& bag, std::span<const archive::PastEvent> history);
std::string next(std::span<const service::Proposal> proposals);
std::string foods(std::span<const service::FoodFacts> facts);

} // namespace thawslip::json
