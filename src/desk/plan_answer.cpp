#include "desk/plan_answer.h"

#include "archive/values.h"
#include "desk/answers.h"
#include "json/value.h"
#include "json/values.h"
#include "render/svg.h"
#include "service/dinner/core_courses.h"
#include "service/dinner/plan_sheet.h"
#include "service/dinner/plan_text.h"

#include <cmath>

namespace thawslip::desk {
namespace {

/// Its drawing, in one picture or several; none where nothing of it can be done, which its remarks
/// say.
json::Json pictures(const service::DinnerPlan& plan, std::size_t beside,
                    const service::Settings& settings, const service::Surroundings& around,
                    service::Messages& messages) {
    auto list = json::Json::array();
    if (plan.line.events.empty()) {
        return list;
    }
    const auto printing = plan_pictures(plan, beside, settings, around);
    messages.add(printing.messages);
    if (printing) {
        const auto& laid_out = printing.value->laid_out;
        for (int sheet = 0; sheet < laid_out.fitting.sheets; ++sheet) {
            list.push_back(render::svg(draw_sheet(laid_out, sheet), laid_out.setup.fonts,
                                       printing.value->job.title));
        }
    }
    return list;
}

/// Null where nothing of it can be done any longer.
json::Json calendar(const service::DinnerPlan& plan, service::Messages& messages) {
    const auto calendar = dinner_calendar(plan);
    if (!calendar) {
        return {};
    }
    messages.add(calendar.messages);
    return *calendar.value;
}

/// The model is good for no more. Rounded down, so that nothing is shown at 0 °C before it is.
double tenths(double celsius) {
    constexpr double last_bits = 1e-6;
    return std::floor(celsius * 10.0 + last_bits) / 10.0;
}

json::Json points_json(const std::vector<kitchen::CorePoint>& points) {
    return json::list_of(points, [](const kitchen::CorePoint& point) {
        return json::Json{point.after.count(), tenths(point.low), tenths(point.high)};
    });
}

/// How warm the middle of the bags is while they thaw.
json::Json core(const service::DinnerPlan& plan, const kitchen::ThawSettings& thaw) {
    return json::list_of(service::core_courses(plan, thaw), [&](const auto& course) {
        return json::Json{
            {"dish", plan.dishes[course.dish].package.dish},
            {"method", archive::word_of(course.method)},
            {"thaw_begins", kitchen::to_iso(on_clock(plan.line.clock, course.begins))},
            {"points", points_json(course.points)},
            {"warmest", course.medium}};
    });
}

} // namespace

json::Json plan_answer(const service::DinnerPlan& plan, std::size_t beside,
                       service::Messages messages, const service::Settings& settings,
                       const service::Surroundings& around) {
    const auto style = style_of(settings);
    auto answer = json::plan_json(plan, style);
    answer["possible"] = can_be_done(plan.line);
    answer["text"] = service::plan_text(plan, style);
    answer["svg"] = pictures(plan, beside, settings, around, messages);
    answer["calendar"] = calendar(plan, messages);
    answer["core"] = core(plan, settings.kitchen.thaw);
    answer["messages"] = messages_for_page(messages);
    return answer;
}

} // namespace thawslip::desk
