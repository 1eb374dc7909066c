#include "kitchen/cooking/side_start.h"

#include "kitchen/timeline/cook_window.h"
#include "kitchen/timeline/finish_order.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using std::chrono::minutes;

/// Stands for a cooking time that is not known: longer than any.
constexpr minutes unknown = std::chrono::hours{24 * 30};

std::optional<minutes> cooking_of(const PlannedPackage& planned) {
    const auto range = usable_cook_time(planned.package);
    return range ? std::optional{middle_of(*range)} : std::nullopt;
}

SideStart start_of(const Side& side, std::size_t index, const PlannedPackage& planned) {
    using Anchor = When::Anchor;
    const auto takes = side.takes.high;
    const auto& ready = side.ready;
    const bool of_start = ready.anchor == Anchor::AtStart || ready.anchor == Anchor::AfterStart;
    const auto cooking = cooking_of(planned);
    if (of_start || (ready.anchor == Anchor::Halfway && cooking)) {
        const auto at = time_from_start(ready, cooking.value_or(unknown));
        return {index, SideStart::From::Start, at - takes};
    }
    const auto before = ready.anchor == Anchor::BeforeEnd ? ready.offset : minutes{0};
    return {index, SideStart::From::Serving, takes + before};
}

/// Minutes after the dish starts to cook.
minutes position(const SideStart& start, const PlannedPackage& planned) {
    return start.from == SideStart::From::Start
               ? start.offset
               : cooking_of(planned).value_or(unknown) - start.offset;
}

} // namespace

std::vector<SideStart> side_starts(const PlannedPackage& planned) {
    std::vector<SideStart> starts;
    const auto& sides = planned.package.sides;
    for (std::size_t i = 0; i < sides.size(); ++i) {
        starts.push_back(start_of(sides[i], i, planned));
    }
    std::ranges::stable_sort(starts, {},
                             [&](const SideStart& start) { return position(start, planned); });
    return starts;
}

bool comes_before(const SideStart& start, When when, const PlannedPackage& planned) {
    return position(start, planned) < time_from_start(when, cooking_of(planned).value_or(unknown));
}

bool comes_before_dish(const SideStart& start, const PlannedPackage& planned) {
    return position(start, planned) < minutes{0};
}

} // namespace thawslip::kitchen
