#include "kitchen/timeline/shared_appliance.h"

#include <algorithm>

namespace thawslip::kitchen {

namespace {

/// What is in which appliance, for how long.
struct Use {
    Vessel vessel = Vessel::Other;
    Instant from;
    Instant to;
    std::size_t dish = 0;
    std::optional<std::size_t> side = std::nullopt;
};

/// Of what a kitchen has one.
bool is_appliance(Vessel vessel) {
    return vessel != Vessel::Other && vessel != Vessel::Pan && vessel != Vessel::Pot;
}

std::vector<Use> uses_of(const TimelineRequest& request, std::span<const DishTimeline> dishes) {
    std::vector<Use> uses;
    const auto add = [&uses](Use use) {
        if (is_appliance(use.vessel))
            uses.push_back(use);
    };
    for (std::size_t dish = 0; dish < dishes.size(); ++dish) {
        const auto& planned = dishes[dish];
        const auto& package = request.dishes[dish].package;
        if (planned.outlook == Outlook::TooLate)
            continue;
        if (planned.cook)
            add({package.cook->vessel, planned.cook->at, planned.cook->at + planned.cook->takes,
                 dish});
        for (const auto& side : planned.sides)
            add({package.sides[side.side].vessel, side.at, side.ready, dish, side.side});
    }
    return uses;
}

} // namespace

std::vector<TimelineRemark> shared_appliances(const TimelineRequest& request,
                                              std::span<const DishTimeline> dishes) {
    const auto uses = uses_of(request, dishes);
    std::vector<TimelineRemark> remarks;
    for (auto use = uses.begin(); use != uses.end(); ++use) {
        const auto other = std::find_if(uses.begin(), use, [&](const Use& before) {
            return before.vessel == use->vessel && before.from < use->to && use->from < before.to;
        });
        if (other != use)
            remarks.push_back(
                {.id = RemarkId::SharedAppliance,
                 .dish = use->dish,
                 .values = {std::max(use->from, other->from), std::min(use->to, other->to)},
                 .side = use->side});
    }
    return remarks;
}

} // namespace thawslip::kitchen
