#include "service/dinner/core_courses.h"

#include <optional>

namespace thawslip::service {
namespace {

/// When and how long a dish thaws.
struct Thawed {
    kitchen::ThawLead lead;
    kitchen::Instant begins;
    kitchen::Instant used; ///< when cooking begins, or the meal
};

/// By a faster way no more is known than how long it takes at most.
Thawed thawed_by(const kitchen::FasterWay& way) {
    kitchen::ThawLead lead;
    lead.method = way.method;
    lead.lead = way.start - way.begin;
    lead.soonest = lead.lead;
    lead.placing = kitchen::Placing::Rack;
    return {lead, way.begin, way.start};
}

std::optional<Thawed> thawed(const kitchen::DishTimeline& dish, kitchen::Instant eat) {
    if (dish.outlook == kitchen::Outlook::FasterWay) {
        return thawed_by(dish.ways.front());
    }
    if (dish.outlook != kitchen::Outlook::InTime || !dish.thaw) {
        return std::nullopt;
    }
    return Thawed{dish.thaw->lead, dish.thaw->at, dish.cook ? dish.cook->at : eat};
}

} // namespace

std::vector<CoreCourse> core_courses(const DinnerPlan& plan, const kitchen::ThawSettings& thaw) {
    std::vector<CoreCourse> courses;
    for (std::size_t dish = 0; dish < plan.dishes.size(); ++dish) {
        const auto thawing = thawed(plan.line.dishes[dish], plan.line.eat);
        if (!thawing) {
            continue;
        }
        const auto settings =
            settings_for(plan.dishes[dish].package, plan.dishes[dish].wetness, thaw);
        auto points = core_course(thawing->lead, settings, thawing->used - thawing->begins);
        if (!points.empty()) {
            courses.push_back({dish, thawing->lead.method, thawing->begins,
                               medium_celsius(thawing->lead.method, settings), std::move(points)});
        }
    }
    return courses;
}

} // namespace thawslip::service
