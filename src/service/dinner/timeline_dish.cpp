#include "service/dinner/timeline_dish.h"

#include "base/list.h"
#include "kitchen/measures/proportion.h"

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

/// Of a card's cautions those that a plan says too: it stands where they matter, at the door of the
/// refrigerator and at the stove.
bool is_of_a_plan(const kitchen::Caution& caution) {
    constexpr std::string_view at_the_stove[] = {"hold-briefly", "thaw-on-a-plate",
                                                 "microwave-stand", "under-pressure",
                                                 "high-altitude-slow-cooker"};
    return caution.level == kitchen::CautionLevel::LabelAndCard ||
           contains(at_the_stove, caution.id) || caution.id.starts_with("side-minimum");
}

std::vector<kitchen::Caution> plan_cautions(const kitchen::PlannedPackage& planned) {
    std::vector<kitchen::Caution> cautions;
    std::ranges::copy_if(planned.cautions, std::back_inserter(cautions),
                         [](const kitchen::Caution& caution) {
                             // Those with a way to thaw are of the other ways.
                             return caution.thawed_by.empty() && is_of_a_plan(caution);
                         });
    return cautions;
}

/// What a file says to add, or to cook beside it, is for one bag.
void add_for_all_bags(kitchen::TimelineDish& dish) {
    const kitchen::Amount bags{static_cast<int>(std::max<std::size_t>(dish.bags.size(), 1)), 1};
    for (auto& finish : dish.package.finish) {
        finish.add = in_proportion(finish.add, bags);
    }
    for (auto& side : dish.package.sides) {
        side.add = in_proportion(side.add, bags);
    }
}

} // namespace

kitchen::TimelineDish timeline_dish(const kitchen::PlannedPackage& planned) {
    kitchen::TimelineDish dish{.package = planned.package,
                               .bags = {},
                               .keeps_thawed = keeps_thawed(planned),
                               .wetness = planned.wetness,
                               .raw = planned.raw,
                               .cautions = plan_cautions(planned),
                               .after_thawing = planned.after_thawing,
                               .served = planned.served,
                               .keep_until = planned.keep_until.date.ok()
                                                 ? std::optional{planned.keep_until}
                                                 : std::nullopt,
                               .hold = planned.hold,
                               .counts_from_frozen = planned.counts_from_frozen,
                               .thaw_lead = planned.thaw_lead};
    dish.package.finish = planned.finish;
    dish.bags = mapped(planned.bags, &kitchen::Bag::id);
    add_for_all_bags(dish);
    for (auto other : planned.other_thaws) {
        other.bags = planned.bags;
        dish.other_thaws.push_back(timeline_dish(other));
    }
    return dish;
}

} // namespace thawslip::service
