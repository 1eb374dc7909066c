#include "kitchen/timeline/cook_window.h"

#include "kitchen/timeline/finish_order.h"

#include <algorithm>

namespace thawslip::kitchen {

namespace {

using std::chrono::minutes;

constexpr minutes longest_span = std::chrono::days{14};

bool usable(minutes span) {
    return span >= minutes{0} && span <= longest_span;
}

} // namespace

std::optional<TimeRange> usable_cook_time(const Package& package) {
    if (!package.cook || !package.cook->time)
        return std::nullopt;
    const TimeRange range = *package.cook->time;
    if (!usable(range.low) || !usable(range.high) || range.high < range.low)
        return std::nullopt;
    return range;
}

std::optional<TimeRange> usable_cook_time(const TimelineDish& dish) {
    const auto range = usable_cook_time(dish.package);
    return range ? std::optional{for_all_bags(dish, with_hold(*range, dish.hold))} : std::nullopt;
}

TimeRange for_all_bags(const TimelineDish& dish, TimeRange one) {
    if (dish.package.cook->vessel != Vessel::Microwave)
        return one;
    return {in_turn(dish, one.low), in_turn(dish, one.high)};
}

minutes in_turn(const TimelineDish& dish, minutes one) {
    return one * static_cast<int>(std::max<std::size_t>(dish.bags.size(), 1));
}

TimeRange with_hold(TimeRange range, std::optional<std::chrono::seconds> hold) {
    const auto held = std::chrono::ceil<minutes>(hold.value_or(std::chrono::seconds{0}));
    return {range.low + held, range.high + held};
}

minutes middle_of(TimeRange range) {
    return (range.low + range.high + minutes{1}) / 2;
}

CookWindow cook_window(TimeRange range, Instant eat, Instant now) {
    CookWindow window{
        .no_earlier = eat - range.high, .no_later = eat - range.low, .at = eat - middle_of(range)};
    if (window.at < now && now <= window.no_later)
        window.at = now;
    window.takes = eat - window.at;
    return window;
}

FinishTime finish_time(When when, const std::optional<CookWindow>& cook, Instant eat) {
    using Anchor = When::Anchor;
    if (!usable(when.offset))
        return {std::nullopt, RemarkId::FinishTimeUnknown};
    if (!cook) {
        if (when.anchor == Anchor::AtServing)
            return {eat};
        if (when.anchor == Anchor::BeforeEnd)
            return {eat - when.offset};
        return {std::nullopt, RemarkId::FinishTimeUnknown};
    }
    if (when.anchor == Anchor::AfterStart && when.offset > cook->takes)
        return {eat, RemarkId::FinishAfterReady};
    const Instant at = cook->at + time_from_start(when, cook->takes);
    if (when.anchor == Anchor::BeforeEnd && when.offset > cook->takes)
        return {at, RemarkId::FinishBeforeStart};
    return {at};
}

} // namespace thawslip::kitchen
