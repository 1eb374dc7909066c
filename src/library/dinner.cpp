#include "thawslip/dinner.h"

#include "library/parts.h"
#include "service/days.h"
#include "service/dinner/dinner_plan.h"

#include <fmt/format.h>

namespace thawslip {
namespace {

DinnerStep step_of(const service::DinnerPlan& plan, std::size_t i) {
    const auto& event = plan.line.events[i];
    return {kitchen::to_iso(kitchen::on_clock(plan.line.clock, event.at)),
            plan.dishes[event.dish].package.dish, plan.words[i].summary};
}

Dinner dinner_of(const service::DinnerPlan& plan) {
    Dinner dinner;
    for (std::size_t i = 0; i < plan.line.events.size(); ++i) {
        dinner.steps.push_back(step_of(plan, i));
    }
    dinner.calendar = service::dinner_calendar(plan).value.value_or("");
    return dinner;
}

} // namespace

Outcome<Dinner> plan_dinner(const Kitchen& kitchen, const std::vector<DayText>& days,
                            const DinnerQuestion& question) {
    const auto& settings = kitchen.parts().settings;
    const auto eat = kitchen::parse_local_minute(question.eat);
    const auto now = kitchen::parse_local_minute(question.now);
    if (!eat || !now) {
        return library::refused<Dinner>(
            fmt::format("\"{}\" is no date and time", eat ? question.now : question.eat),
            {"write it as 2026-12-03T18:30"});
    }
    const auto planned = service::plan_days(library::texts_of(days), settings);
    service::Messages messages;
    messages.add(planned.diagnostics, planned.documents);
    if (messages.have_errors()) {
        return {std::nullopt, library::messages_of(messages)};
    }
    const kitchen::LocalClock clock{std::chrono::minutes{question.minutes_ahead_of_utc}, {}};
    const service::DinnerQuestion asked{question.dishes, *eat, read_clock(clock, *now).instant,
                                        clock, settings.kitchen.thaw};
    return library::outcome_of(
        service::dinner_plan(packages_of(planned), asked, service::style_of(settings)), dinner_of);
}

} // namespace thawslip
