#pragma once

#include "kitchen/day.h"
#include "kitchen/local_clock.h"
#include "kitchen/thaw_lead.h"
#include "kitchen/timeline_remark.h"

#include <chrono>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::kitchen {

/// A dish for the table: its package and the labels of the bags that are taken out.
struct TimelineDish {
    Package package;
    std::vector<std::string> bags;

    /// How long it may wait in the refrigerator once it is thawed there: what
    /// days_left_after_thawing of fridge_life.h says of its food. The default is the low end of
    /// USDA FSIS's 3–4 days for leftovers ("Leftovers and Food Safety").
    std::chrono::hours keeps_thawed{72};
};

struct TimelineRequest {
    std::vector<TimelineDish> dishes;
    LocalMinute eat;
    Instant now;
    LocalClock clock;
    ThawSettings thaw = {};

    /// When somebody is up to move a bag, by the clock: common practice, no source.
    std::chrono::minutes day_begins = std::chrono::hours{7};
    std::chrono::minutes day_ends = std::chrono::hours{22};
};

/// When to start thawing. `at` is the latest time within the window when somebody is up; where
/// there is none, the last moment.
struct ThawWindow {
    Instant no_earlier; ///< before that it may be thawed for longer than it keeps
    Instant no_later;   ///< after that it may not be thawed through when cooking starts
    Instant at;
    ThawLead lead;
};

/// When to start cooking. A range such as "7–9 h" is planned for its middle.
struct CookWindow {
    Instant no_earlier; ///< started here it is ready after the longest time
    Instant no_later;   ///< the latest safe start: just the shortest time is left
    Instant at;
    std::chrono::minutes takes{0}; ///< from `at` to the time to eat
};

struct DishTimeline {
    std::optional<ThawWindow> thaw; ///< nothing when cooked from frozen
    std::optional<CookWindow> cook; ///< nothing without a usable cooking time
};

enum class TimelineStep { Thaw, Start, Add, Ready };

struct TimelineEvent {
    Instant at;
    TimelineStep what = TimelineStep::Thaw;
    std::size_t dish = 0;                             ///< index of the request's dish
    std::optional<std::size_t> finish = std::nullopt; ///< for Add: index of its package's `finish`
    friend bool operator==(const TimelineEvent&, const TimelineEvent&) = default;
};

/// All that has to happen for one table, in order of time. Spans are real time, so a clock change
/// moves what the clock shows and not how long anything thaws or cooks.
struct Timeline {
    LocalClock clock;
    Instant eat;
    std::vector<DishTimeline> dishes; ///< as in the request
    std::vector<TimelineEvent> events;
    std::vector<TimelineRemark> remarks;
};

/// Whether nothing stands against it: no remark says that it cannot be done.
bool can_be_done(const Timeline& line);

/// Works backwards from the time to eat: cooking starts its middle time before, finishing
/// ingredients go in between, thawing starts its lead before cooking. A cooking time is taken as
/// written: for thawed food, unless the package's thaw method is FromFrozen.
///
/// Where the planned start is past but the shortest time still fits, cooking is planned from now.
/// Where a bag can no longer thaw as planned, its events stay and remarks offer each faster safe
/// way that still fits: cold water, microwave, and from frozen (half as long again) in an oven,
/// pan, pot or microwave but never in a slow cooker. A frozen bag that is meant for a slow cooker
/// gets no events at all.
/// Cooking times and finishing offsets that are negative or longer than 14 days are not usable.
Timeline timeline(const TimelineRequest& request);

} // namespace thawslip::kitchen
