#include "service/dinner/timeline_dish.h"

#include "base/list.h"

#include <algorithm>
#include <iterator>

namespace thawslip::service {
namespace {

/// How long it keeps once thawed: the list's days, or the same day, taken as half of one. Where
/// no list says anything, the low end of USDA FSIS's 3–4 days for leftovers.
std::chrono::hours keeps_thawed(const kitchen::PlannedPackage& planned) {
    constexpr std::chrono::hours same_day{12};
    const kitchen::TimelineDish usual;
    return planned.after_thawing
               ? std::max<std::chrono::hours>(planned.after_thawing->low, same_day)
               : usual.keeps_thawed;
}

std::vector<kitchen::Caution> label_cautions(const kitchen::PlannedPackage& planned) {
    std::vector<kitchen::Caution> cautions;
    std::ranges::copy_if(planned.cautions, std::back_inserter(cautions),
                         [](const kitchen::Caution& caution) {
                             return caution.thawed_by.empty() && // those are of the other ways
                                    (caution.level == kitchen::CautionLevel::LabelAndCard ||
                                     caution.id == "hold-briefly");
                         });
    return cautions;
}

} // namespace

kitchen::TimelineDish timeline_dish(const kitchen::PlannedPackage& planned) {
    kitchen::TimelineDish dish{.package = planned.package,
                               .bags = {},
                               .keeps_thawed = keeps_thawed(planned),
                               .wetness = planned.wetness,
                               .raw = planned.raw,
                               .cautions = label_cautions(planned),
                               .after_thawing = planned.after_thawing,
                               .served = planned.served,
                               .hold = planned.hold,
                               .counts_from_frozen = planned.counts_from_frozen,
                               .thaw_lead = planned.thaw_lead};
    dish.package.finish = planned.finish;
    dish.bags = mapped(planned.bags, &kitchen::Bag::id);
    for (auto other : planned.other_thaws) {
        other.bags = planned.bags;
        dish.other_thaws.push_back(timeline_dish(other));
    }
    return dish;
}

} // namespace thawslip::service
