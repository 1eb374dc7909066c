#include "kitchen/timeline/shared_appliance.h"

#include "base/list.h"
#include "kitchen/cooking/gentle_heat.h"

#include <algorithm>
#include <string_view>
#include <tuple>

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

/// Uses of one appliance of which each begins before those ahead of it are over.
struct Run {
    std::vector<Use>::const_iterator until; ///< behind the last of them
    Instant shared_to;                      ///< the last moment when two have need of it
};

Run run_of(std::vector<Use>::const_iterator first, std::vector<Use>::const_iterator end) {
    Run run{first + 1, first->from};
    for (Instant busy_to = first->to; run.until != end; ++run.until) {
        const auto& use = *run.until;
        if (use.vessel != first->vessel || use.in != first->in || use.from >= busy_to)
            break;
        run.shared_to = std::max(run.shared_to, std::min(use.to, busy_to));
        busy_to = std::max(busy_to, use.to);
    }
    return run;
}

/// From when until when, and what: one remark, however many things they are.
TimelineRemark remark_of(std::span<const Use> run, Instant to) {
    std::vector<DishPart> parts;
    for (const auto& use : run)
        add_once(parts, DishPart{use.dish, use.side});
    std::ranges::sort(parts);
    return {.id = RemarkId::SharedAppliance, .values = {run[1].from, to, std::move(parts)}};
}

} // namespace

std::vector<TimelineRemark> shared_appliances(const TimelineRequest& request,
                                              std::span<const DishTimeline> dishes) {
    auto sorted = uses_of(request, dishes);
    std::ranges::stable_sort(sorted, {}, [](const Use& use) {
        return std::tuple{use.vessel, use.in, use.from};
    });
    const auto& uses = sorted;
    std::vector<TimelineRemark> remarks;
    for (auto use = uses.begin(); use != uses.end();) {
        const auto run = run_of(use, uses.end());
        if (run.until != use + 1)
            remarks.push_back(remark_of({use, run.until}, run.shared_to));
        use = run.until;
    }
    return remarks;
}

} // namespace thawslip::kitchen
