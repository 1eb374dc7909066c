#include "kitchen/timeline/cook_window.h"
#include "kitchen/timeline/timeline.h"

#include <algorithm>
#include <utility>

namespace thawslip::kitchen {

namespace {

/// A dish planned alone, as others at the table change nothing of it.
DishTimeline planned_alone(const TimelineRequest& request, const TimelineDish& dish,
                           bool& may_be_done) {
    auto alone = request;
    alone.dishes = {dish};
    auto line = timeline(alone);
    may_be_done = can_be_done(line) && line.dishes.front().outlook == Outlook::InTime;
    return std::move(line.dishes.front());
}

/// By when the first thing had to be done: thawing, or cooking from frozen.
std::optional<Instant> last_moment(const DishTimeline& planned) {
    if (planned.thaw)
        return planned.thaw->no_later;
    return planned.cook ? std::optional{planned.cook->no_later} : std::nullopt;
}

/// Whether how long it cooks is known of the first way alone: from frozen, where no time is
/// published. Nobody can say of such a way that it serves.
bool hides_cook_time(const TimelineDish& first, const TimelineDish& other) {
    return usable_cook_time(first) && !usable_cook_time(other);
}

TimelineDish in_time(const TimelineRequest& request, const TimelineDish& dish) {
    bool may_be_done = false;
    const auto first = planned_alone(request, dish, may_be_done);
    if (may_be_done || dish.other_thaws.empty())
        return dish;
    for (auto other : dish.other_thaws) {
        if (hides_cook_time(dish, other))
            continue;
        planned_alone(request, other, may_be_done);
        if (may_be_done) {
            other.missed = last_moment(first);
            return other;
        }
    }
    return dish;
}

} // namespace

TimelineRequest with_thaw_in_time(TimelineRequest request) {
    auto dishes = request.dishes;
    for (auto& dish : dishes)
        dish = in_time(request, dish);
    request.dishes = std::move(dishes);
    return request;
}

} // namespace thawslip::kitchen
