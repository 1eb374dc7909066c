#include "kitchen/cooking/cook_time.h"

#include "base/list.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using std::chrono::minutes;

minutes half_as_long_again(minutes time) {
    constexpr minutes step{5};
    const auto longer = (time * 3 + minutes{1}) / 2;
    return (longer + step - minutes{1}) / step * step;
}

} // namespace

bool takes_frozen(Vessel vessel) {
    return vessel == Vessel::Oven || vessel == Vessel::Pan || vessel == Vessel::Pot;
}

TimeRange from_frozen(TimeRange thawed) {
    return {half_as_long_again(thawed.low), half_as_long_again(thawed.high)};
}

bool may_count_from_frozen(const Package& package, const StorageTable& table) {
    using enum FoodKind;
    const bool meat =
        !package.food.empty() && std::ranges::all_of(package.food, [&](const std::string& food) {
            return is_one_of(kind_of(table, food), {RawGround, RawPoultry, RawCut});
        });
    return meat && package.cook && takes_frozen(package.cook->vessel);
}

Package with_time_as_cooked(Package package, const StorageTable& table) {
    const bool turned = package.thaw.method == ThawMethod::FromFrozen && package.cook &&
                        package.cook->time && package.cook->time_from == TimeFrom::Thawed;
    if (turned && may_count_from_frozen(package, table)) {
        package.cook->time = from_frozen(*package.cook->time);
        package.cook->time_from = TimeFrom::Frozen;
    }
    return package;
}

} // namespace thawslip::kitchen
