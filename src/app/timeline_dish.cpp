#include "app/timeline_dish.h"

#include <algorithm>

namespace thawslip::app {
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

} // namespace

kitchen::TimelineDish timeline_dish(const kitchen::PlannedPackage& planned) {
    kitchen::TimelineDish dish{
        planned.package, {}, keeps_thawed(planned), planned.wetness, planned.thaw_lead};
    dish.package.finish = planned.finish;
    for (const auto& bag : planned.bags) {
        dish.bags.push_back(bag.id);
    }
    return dish;
}

} // namespace thawslip::app
