#pragma once

#include "kitchen/timeline/timeline.h"

namespace thawslip::kitchen {

/// The cooking time of a package if it is given and makes sense: not negative, the ends in order,
/// at most 14 days.
std::optional<TimeRange> usable_cook_time(const Package& package);

/// A cooking time and after it the time for which the middle has to stay hot, rounded up to a whole
/// minute.
TimeRange with_hold(TimeRange range, std::optional<std::chrono::seconds> hold);

/// The same for the cooking time of a dish, all its bags, if it is usable.
std::optional<TimeRange> usable_cook_time(const TimelineDish& dish);

/// How long all bags of a dish cook, where one cooks for `one`: in a microwave one after another,
/// else together.
/// \pre it is cooked
TimeRange for_all_bags(const TimelineDish& dish, TimeRange one);

/// How long it takes to do to each bag what takes `one`, one bag after another.
std::chrono::minutes in_turn(const TimelineDish& dish, std::chrono::minutes one);

/// The middle of a range, rounded up to a whole minute.
std::chrono::minutes middle_of(TimeRange range);

/// The window that ends with eating at `eat`. Where its planned start is past at `now` but the
/// latest is not, `at` is `now`.
CookWindow cook_window(TimeRange range, Instant eat, Instant now);

/// When a finishing ingredient goes in; or, where that cannot be told or was moved, why.
struct FinishTime {
    std::optional<Instant> at;
    std::optional<RemarkId> remark = std::nullopt; ///< FinishTimeUnknown, …BeforeStart, …AfterReady
};

/// \param cook nothing without a usable cooking time: then only times counted back from the end
///             can be told
FinishTime finish_time(When when, const std::optional<CookWindow>& cook, Instant eat);

} // namespace thawslip::kitchen
