#include "json/answers.h"

#include "json/value.h"

namespace thawslip::json {

std::string check(const service::Days* days, const service::Messages& messages,
                  const wording::Style& style) {
    return to_text(check_json(days, messages, style));
}

std::string plan(const service::DinnerPlan& plan, const wording::Style& style) {
    return to_text(plan_json(plan, style));
}

std::string message(const code::Message& message, kitchen::Date today,
                    const wording::Style& style) {
    return to_text(message_json(message, today, style));
}

std::string text(const std::string& text) {
    return to_text(text_json(text));
}

std::string freezer(std::span<const service::FoundBag> bags, kitchen::Date today,
                    const wording::Style& style) {
    return to_lines(freezer_json(bags, today, style));
}

std::string history(const archive::Bag& bag, std::span<const archive::PastEvent> history) {
    return to_text(history_json(bag, history));
}

std::string next(std::span<const service::Proposal> proposals) {
    return to_lines(next_json(proposals));
}

std::string foods(std::span<const service::FoodFacts> facts) {
    return to_lines(foods_json(facts));
}

} // namespace thawslip::json
