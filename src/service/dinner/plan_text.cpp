#include "service/dinner/plan_text.h"

#include "wording/late_dish.h"
#include "wording/phrases.h"
#include "wording/timeline_words.h"

#include <fmt/format.h>

namespace thawslip::service {
namespace {

using kitchen::TimelineRemark;
using service::DinnerPlan;
using wording::is_of_late_dish;
using wording::Style;

/// "Squash and red lentil stew: …", with the ingredient where it is about one.
std::string remark_text(const DinnerPlan& plan, const TimelineRemark& remark, const Style& style) {
    auto text = say_remark(plan.line, plan.dishes, remark, style);
    if (!remark.dish) {
        return text;
    }
    const auto& package = plan.dishes[*remark.dish].package;
    const auto what = remark.finish ? ", " + package.finish[*remark.finish].add.as_written
                      : remark.side ? ", " + package.sides[*remark.side].add.as_written
                                    : std::string{};
    return fmt::format("{}{}: {}", say_sized(package, style), what, text);
}

std::string events_text(const DinnerPlan& plan, const Style& style) {
    std::string text;
    std::string day;
    for (std::size_t i = 0; i < plan.line.events.size(); ++i) {
        const auto local = on_clock(plan.line.clock, plan.line.events[i].at);
        if (auto today = say_weekday_date(local, style.language); today != day) {
            text += (day.empty() ? "" : "\n") + today + "\n";
            day = std::move(today);
        }
        const auto& [summary, description] = plan.words[i];
        text += fmt::format("  {}  {}\n", say_time_of_day(local, style.language), summary);
        text += description.empty() ? "" : fmt::format("         {}\n", description);
    }
    return text;
}

std::string late_dish_text(const wording::LateDish& late) {
    auto text = late.head + "\n";
    int number = 0;
    for (const auto& way : late.ways) {
        text += fmt::format("  {}. {}\n", ++number, way);
    }
    for (const auto& said : late.further) {
        text += "  " + said + "\n";
    }
    return text + "\n";
}

std::string late_dishes_text(const DinnerPlan& plan, const Style& style) {
    std::string text;
    for (std::size_t dish = 0; dish < plan.dishes.size(); ++dish) {
        if (const auto late = say_late_dish(plan.line, plan.dishes, dish, style)) {
            text += late_dish_text(*late);
        }
    }
    return text;
}

/// How much a remark matters, in the language of the plan.
std::string say_weight(kitchen::RemarkWeight weight, const Style& style) {
    switch (weight) {
    case kitchen::RemarkWeight::Note: return style.say("plan.note");
    case kitchen::RemarkWeight::Caution: return style.say("plan.caution");
    case kitchen::RemarkWeight::CannotBeDone: break;
    }
    return style.say("plan.cannot-be-done");
}

std::string remarks_text(const DinnerPlan& plan, const Style& style) {
    std::string text;
    for (const auto& remark : plan.line.remarks) {
        if (!is_of_late_dish(remark)) {
            text += fmt::format("{}: {}\n", say_weight(rule_of(remark.id).weight, style),
                                remark_text(plan, remark, style));
        }
    }
    return text;
}

} // namespace

std::string_view weight_word(kitchen::RemarkWeight weight) {
    switch (weight) {
    case kitchen::RemarkWeight::Note: return "note";
    case kitchen::RemarkWeight::Caution: return "caution";
    case kitchen::RemarkWeight::CannotBeDone: break;
    }
    return "cannot be done";
}

std::string plan_text(const DinnerPlan& plan, const Style& style) {
    const auto events = events_text(plan, style);
    const auto remarks = remarks_text(plan, style);
    return late_dishes_text(plan, style) + events +
           (events.empty() || remarks.empty() ? "" : "\n") + remarks + "\n" +
           style.language.say("standing.local-rules") + "\n";
}

} // namespace thawslip::service
