#include "service/dinner/dinner_plan.h"

#include "base/nearest.h"
#include "kitchen/texts/text.h"
#include "service/dinner/timeline_dish.h"
#include "wording/timeline_words.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// Whether each of `words` begins a word of the dish, as bags are found in the freezer.
bool is_meant(const std::string& dish, const std::string& words) {
    const auto in_dish = kitchen::words_of(dish);
    return std::ranges::all_of(kitchen::words_of(words), [&](const std::string& word) {
        return std::ranges::any_of(
            in_dish, [&](const std::string& whole) { return whole.starts_with(word); });
    });
}

std::vector<kitchen::TimelineDish> dishes_of(std::span<const kitchen::PlannedPackage> packages,
                                             const std::string& words) {
    std::vector<kitchen::TimelineDish> dishes;
    for (const auto& planned : packages) {
        if (is_meant(planned.package.dish, words)) {
            dishes.push_back(timeline_dish(planned));
        }
    }
    return dishes;
}

void refuse_words(std::span<const kitchen::PlannedPackage> packages, const std::string& words,
                  Messages& messages) {
    std::vector<std::string> names;
    for (const auto& planned : packages) {
        names.push_back(planned.package.dish);
    }
    const auto near = nearest(words, names);
    messages.error(
        fmt::format("no dish has the words \"{}\"", words),
        {near ? fmt::format("did you mean \"{}\"?", *near) : "the dishes are " + list_of(names)});
}

bool cannot_be_done(kitchen::Outlook outlook) {
    return outlook == kitchen::Outlook::OnlyIfThawed || outlook == kitchen::Outlook::TooLate;
}

} // namespace

Outcome<DinnerPlan> dinner_plan(std::span<const kitchen::PlannedPackage> packages,
                                const DinnerQuestion& question, const wording::Style& style) {
    Outcome<DinnerPlan> outcome;
    DinnerPlan plan{dishes_of(packages, question.words), {}, {}, question.now};
    if (plan.dishes.empty()) {
        refuse_words(packages, question.words, outcome.messages);
        return outcome;
    }
    plan.line =
        kitchen::timeline({plan.dishes, question.eat, question.now, question.clock, question.thaw});
    for (const auto& event : plan.line.events) {
        plan.words.push_back(say_event(plan.line, plan.dishes, event, style));
    }
    outcome.value = std::move(plan);
    return outcome;
}

Outcome<std::string> dinner_calendar(const DinnerPlan& plan) {
    Outcome<std::string> outcome;
    auto text = calendar_text(plan.line, plan.dishes, plan.words, {plan.now});
    if (text.empty()) {
        outcome.messages.error("this cannot be done in time, so no calendar is written");
        return outcome;
    }
    for (std::size_t dish = 0; dish < plan.dishes.size(); ++dish) {
        if (cannot_be_done(plan.line.dishes[dish].outlook)) {
            outcome.messages.caution(plan.dishes[dish].package.dish +
                                     " cannot be done in time and is left out of the calendar");
        }
    }
    outcome.value = std::move(text);
    return outcome;
}

} // namespace thawslip::service
