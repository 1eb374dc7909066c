#include "service/dinner/dinner_plan.h"

#include "base/list.h"
#include "service/dinner/timeline_dish.h"
#include "service/dish_words.h"
#include "wording/timeline_words.h"

#include <algorithm>
#include <set>

namespace thawslip::service {
namespace {

std::vector<std::string> names_of(std::span<const kitchen::PlannedPackage> packages) {
    return mapped(packages, [](const auto& planned) { return planned.package.dish; });
}

void add_too_few(const kitchen::PlannedPackage& planned, int wanted, Messages& messages) {
    const auto& package = planned.package;
    if (planned.bags.size() < static_cast<std::size_t>(wanted)) {
        messages.caution(too_few_bags(planned.bags.size(), wanted, package.dish,
                                      package.size ? package.servings : 0));
    }
}

/// Those of the packages that are of the dishes meant. Where one has fewer bags than are wanted,
/// that is said.
std::vector<kitchen::TimelineDish> dishes_of(std::span<const kitchen::PlannedPackage> packages,
                                             const DinnerQuestion& question, Messages& messages) {
    const auto names = names_of(packages);
    const auto meant = question.words.empty() ? std::set<std::string>{names.begin(), names.end()}
                                              : dishes_meant(question.words, names, messages);
    std::vector<kitchen::TimelineDish> dishes;
    for (const auto& planned : packages) {
        if (meant.contains(planned.package.dish)) {
            dishes.push_back(timeline_dish(planned));
            add_too_few(planned, question.of_each, messages);
        }
    }
    return dishes;
}

bool cannot_be_done(kitchen::Outlook outlook) {
    return outlook == kitchen::Outlook::OnlyIfThawed || outlook == kitchen::Outlook::TooLate;
}

} // namespace

ClockSpan clock_span(kitchen::LocalMinute eat, kitchen::Instant now) {
    constexpr std::chrono::days before{60};
    constexpr std::chrono::days after{30};
    // Read without knowing its zone: at most a day off.
    const kitchen::Instant roughly{eat.time_since_epoch()};
    return {std::min(roughly, now) - before, std::max(roughly, now) + after};
}

Outcome<DinnerPlan> dinner_plan(std::span<const kitchen::PlannedPackage> packages,
                                const DinnerQuestion& question, const wording::Style& style) {
    Outcome<DinnerPlan> outcome;
    DinnerPlan plan{dishes_of(packages, question, outcome.messages), {}, {}, question.now};
    if (plan.dishes.empty() && !outcome.messages.have_errors()) { // of no package at all
        outcome.messages = no_such_dish(question.words, names_of(packages));
    }
    if (outcome.messages.have_errors()) {
        return outcome;
    }
    auto request = kitchen::with_thaw_in_time(
        {plan.dishes, question.eat, question.now, question.clock, question.thaw});
    plan.line = kitchen::timeline(request);
    plan.dishes = std::move(request.dishes);
    plan.words = mapped(plan.line.events, [&](const kitchen::TimelineEvent& event) {
        return say_event(plan.line, plan.dishes, event, style);
    });
    outcome.value = std::move(plan);
    return outcome;
}

Outcome<std::string> dinner_calendar(const DinnerPlan& plan) {
    Outcome<std::string> outcome;
    auto text = calendar_text(plan.line, plan.dishes, plan.words, {plan.now});
    if (text.empty()) {
        outcome.messages.error("this cannot be done, so no calendar is written");
        return outcome;
    }
    for (std::size_t dish = 0; dish < plan.dishes.size(); ++dish) {
        if (cannot_be_done(plan.line.dishes[dish].outlook)) {
            outcome.messages.caution(plan.dishes[dish].package.dish +
                                     " cannot be done and is left out of the calendar");
        }
    }
    outcome.value = std::move(text);
    return outcome;
}

} // namespace thawslip::service
