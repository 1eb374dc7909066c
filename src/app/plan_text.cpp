#include "app/plan_text.h"

#include "wording/timeline_words.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::app {
namespace {

using kitchen::RemarkId;
using kitchen::TimelineRemark;
using service::DinnerPlan;
using wording::Style;

/// "Squash and red lentil stew: …", with the ingredient where it is about one.
std::string remark_text(const DinnerPlan& plan, const TimelineRemark& remark, const Style& style) {
    auto text = say_remark(plan.line, remark, style.language);
    if (!remark.dish) {
        return text;
    }
    const auto& package = plan.dishes[*remark.dish].package;
    const auto what =
        remark.finish ? ", " + package.finish[*remark.finish].add.as_written : std::string{};
    return fmt::format("{}{}: {}", package.dish, what, text);
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

/// Where a dish is late, these are said before all else: what can still be done, and then what no
/// longer can.
constexpr RemarkId of_late_dishes[] = {RemarkId::ThawOnRack,      RemarkId::ThawByWater,
                                       RemarkId::ThawByMicrowave, RemarkId::CookFromFrozen,
                                       RemarkId::IfThawed,        RemarkId::IfThawedAt,
                                       RemarkId::NoWayInTime,     RemarkId::StartTooLate,
                                       RemarkId::ThawTooLate,     RemarkId::FrozenStartTooLate};

bool is_of_late_dish(const TimelineRemark& remark) {
    return remark.dish && std::ranges::find(of_late_dishes, remark.id) != std::end(of_late_dishes);
}

/// A way with what to mind on it, in one line.
std::string way_text(const DinnerPlan& plan, const kitchen::FasterWay& way, std::size_t dish,
                     const Style& style) {
    auto text = say_remark(plan.line, remark_of(way, dish), style.language);
    for (const auto& caution : cautions_of(way.method, dish)) {
        text += " " + say_remark(plan.line, caution, style.language);
    }
    return text;
}

/// What is said of a dish by one of the remarks; empty where it is not among them.
std::string said_of(const DinnerPlan& plan, RemarkId id, std::size_t dish, const Style& style) {
    const auto found = std::ranges::find_if(plan.line.remarks, [&](const auto& remark) {
        return remark.id == id && remark.dish == dish;
    });
    return found == plan.line.remarks.end() ? std::string{}
                                            : say_remark(plan.line, *found, style.language);
}

std::string late_dish_text(const DinnerPlan& plan, std::size_t dish, const Style& style) {
    const auto& ways = plan.line.dishes[dish].ways;
    auto text = style.say(ways.empty() ? "plan.late-no-way" : "plan.late",
                          {plan.dishes[dish].package.dish}) +
                "\n";
    int number = 0;
    for (const auto& way : ways) {
        text += fmt::format("  {}. {}\n", ++number, way_text(plan, way, dish, style));
    }
    for (const auto id : {RemarkId::IfThawed, RemarkId::IfThawedAt, RemarkId::NoWayInTime,
                          RemarkId::StartTooLate, RemarkId::FrozenStartTooLate}) {
        if (const auto said = said_of(plan, id, dish, style); !said.empty()) {
            text += "  " + said + "\n";
        }
    }
    if (const auto said = said_of(plan, RemarkId::ThawTooLate, dish, style); !said.empty()) {
        text += "  " + style.say("plan.no-longer", {said}) + "\n";
    }
    return text + "\n";
}

std::string late_dishes_text(const DinnerPlan& plan, const Style& style) {
    std::string text;
    for (std::size_t dish = 0; dish < plan.dishes.size(); ++dish) {
        const auto is_about = [&](const TimelineRemark& remark) {
            return remark.dish == dish && is_of_late_dish(remark);
        };
        if (std::ranges::any_of(plan.line.remarks, is_about)) {
            text += late_dish_text(plan, dish, style);
        }
    }
    return text;
}

std::string remarks_text(const DinnerPlan& plan, const Style& style) {
    std::string text;
    for (const auto& remark : plan.line.remarks) {
        if (!is_of_late_dish(remark)) {
            text += fmt::format("{}: {}\n", weight_word(rule_of(remark.id).weight),
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

} // namespace thawslip::app
