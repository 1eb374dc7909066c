#include "archive/values.h"
#include "json/value.h"
#include "json/values.h"
#include "service/dinner/plan_text.h"
#include "wording/plan_words.h"
#include "wording/timeline_words.h"

namespace thawslip::json {
namespace {

using service::DinnerPlan;

std::string_view key(kitchen::TimelineStep step) {
    switch (step) {
    case kitchen::TimelineStep::Thaw: return "thaw";
    case kitchen::TimelineStep::Look: return "look";
    case kitchen::TimelineStep::Start: return "start";
    case kitchen::TimelineStep::Side: return "side";
    case kitchen::TimelineStep::Add: return "add";
    case kitchen::TimelineStep::Ready: break;
    }
    return "ready";
}

std::string time_on_clock(const DinnerPlan& plan, kitchen::Instant instant) {
    return kitchen::to_iso(on_clock(plan.line.clock, instant));
}

Json event_json(const DinnerPlan& plan, std::size_t event_index) {
    const auto& event = plan.line.events[event_index];
    const auto& dish = plan.dishes[event.dish];
    const auto& [summary, description] = plan.words[event_index];
    return {{"at", time_on_clock(plan, event.at)},
            {"what", key(event.what)},
            {"dish", dish.package.dish},
            {"bags", dish.bags},
            {"text", description.empty() ? summary : summary + ". " + description}};
}

/// The places of the events at which a remark is to be minded; none: before all.
Json events_of(const DinnerPlan& plan, const kitchen::TimelineRemark& remark) {
    Json places = Json::array();
    for (std::size_t event = 0; event < plan.line.events.size(); ++event) {
        if (wording::is_minded_at(remark, plan.line.events[event])) {
            places.push_back(event);
        }
    }
    return places;
}

Json remark_json(const DinnerPlan& plan, const kitchen::TimelineRemark& remark,
                 const wording::Style& style) {
    const auto& rule = rule_of(remark.id);
    return {{"id", rule.key},
            {"severity", service::weight_word(rule.weight)},
            {"dish", remark.dish ? Json(plan.dishes[*remark.dish].package.dish) : Json{}},
            {"events", events_of(plan, remark)},
            {"text", say_remark(plan.line, plan.dishes, remark, style)}};
}

Json way_json(const DinnerPlan& plan, std::size_t dish, const kitchen::FasterWay& way,
              const wording::Style& style) {
    const auto said = [&](const kitchen::TimelineRemark& caution) {
        return say_remark(plan.line, plan.dishes, caution, style);
    };
    return {{"dish", plan.dishes[dish].package.dish},
            {"method", archive::word_of(way.method)},
            {"begin", time_on_clock(plan, way.begin)},
            {"start", time_on_clock(plan, way.start)},
            {"ready", time_on_clock(plan, plan.line.eat)},
            {"text", say_remark(plan.line, plan.dishes, remark_of(way, dish), style)},
            {"cautions", list_of(cautions_of(way.method, dish), said)}};
}

/// How a dish is thawed: by the first method on its label, or the next that serves.
Json dish_json(const kitchen::TimelineDish& dish) {
    return {{"dish", dish.package.dish},
            {"raw", dish.raw},
            {"serves", dish.package.servings},
            {"bags", dish.bags},
            {"thaw", archive::word_of(dish.package.thaw.method)},
            {"first_choice", !dish.missed.has_value()}};
}

} // namespace

Json plan_json(const DinnerPlan& plan, const wording::Style& style) {
    Json answer{{"eat", time_on_clock(plan, plan.line.eat)},
                {"ways", Json::array()},
                {"events", Json::array()},
                {"remarks", Json::array()},
                {"dishes", Json::array()}};
    for (std::size_t dish = 0; dish < plan.dishes.size(); ++dish) {
        answer["dishes"].push_back(dish_json(plan.dishes[dish]));
        for (const auto& way : plan.line.dishes[dish].ways) {
            answer["ways"].push_back(way_json(plan, dish, way, style));
        }
    }
    for (std::size_t i = 0; i < plan.line.events.size(); ++i) {
        answer["events"].push_back(event_json(plan, i));
    }
    for (const auto& remark : plan.line.remarks) {
        answer["remarks"].push_back(remark_json(plan, remark, style));
    }
    return answer;
}

} // namespace thawslip::json
