#include "kitchen/timeline/shared_appliance.h"

#include "kitchen/cooking/gentle_heat.h"

#include <algorithm>
#include <string_view>

namespace thawslip::kitchen {

namespace {

/// What is in which appliance, for how long.
struct Use {
    Vessel vessel = Vessel::Other;
    Instant from;
    Instant to;
    std::size_t dish = 0;
    std::optional<std::size_t> side = std::nullopt;
    std::string_view in = {}; ///< which one, of those that cook as slowly as a slow cooker
};

/// Of what a kitchen has one.
bool is_appliance(Vessel vessel) {
    return vessel != Vessel::Other && vessel != Vessel::Pan && vessel != Vessel::Pot;
}

std::string_view in_which(Vessel vessel, std::string_view in) {
    return vessel == Vessel::SlowCooker ? slow_appliance(in) : std::string_view{};
}

/// From when until when it thaws in the microwave, as planned or by the first of the faster ways.
std::optional<std::pair<Instant, Instant>> in_microwave(const DishTimeline& planned) {
    if (planned.outlook == Outlook::FasterWay) {
        const auto& way = planned.ways.front();
        return way.method == ThawMethod::Microwave ? std::optional{std::pair{way.begin, way.start}}
                                                   : std::nullopt;
    }
    const auto& thaw = planned.thaw;
    return thaw && thaw->lead.method == ThawMethod::Microwave && planned.outlook == Outlook::InTime
               ? std::optional{std::pair{thaw->at, thaw->at + thaw->lead.lead}}
               : std::nullopt;
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
        if (const auto thawing = in_microwave(planned))
            add({Vessel::Microwave, thawing->first, thawing->second, dish});
        if (planned.cook)
            add({package.cook->vessel,
                 planned.cook->at,
                 planned.cook->at + planned.cook->takes,
                 dish,
                 {},
                 in_which(package.cook->vessel, package.cook->in)});
        for (const auto& planned_side : planned.sides) {
            const auto& side = package.sides[planned_side.side];
            add({side.vessel, planned_side.at, planned_side.ready, dish, planned_side.side,
                 in_which(side.vessel, side.in)});
        }
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
            return before.vessel == use->vessel && before.in == use->in && before.from < use->to &&
                   use->from < before.to;
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
