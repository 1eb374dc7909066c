#pragma once

#include "kitchen/cautions/caution.h"
#include "kitchen/day.h"
#include "kitchen/heat/thaw_ceiling.h"
#include "kitchen/heat/thaw_lead.h"
#include "kitchen/storage/fridge_life.h"
#include "kitchen/storage/keep_until.h"
#include "kitchen/timeline/local_clock.h"
#include "kitchen/timeline/timeline_remark.h"

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

    Wetness wetness = Wetness::Dish; ///< of its food

    bool raw = false;                   ///< whether what is in the bag is raw, or a part of it
    std::vector<Caution> cautions = {}; ///< those of its label, and how long it stays hot
    std::optional<DaysLeft> after_thawing = std::nullopt; ///< as its label says

    Served served = Served::Cooked;

    std::optional<KeepUntil> keep_until = std::nullopt; ///< the date on its label, where known

    /// How long its middle has to stay hot: that comes after the cooking time.
    std::optional<std::chrono::seconds> hold = std::nullopt;

    /// Whether a time from frozen is published for it: may_count_from_frozen of cook_time.h.
    bool counts_from_frozen = false;

    /// How long it thaws, as its label says; nothing: to be worked out with the request's settings.
    std::optional<ThawLead> thaw_lead = std::nullopt;

    /// The same dish by each other method that its label names, in that order.
    std::vector<TimelineDish> other_thaws = {};

    /// When the first method on its label had to begin, where another took its place: see
    /// with_thaw_in_time.
    std::optional<Instant> missed = std::nullopt;
};

struct TimelineRequest {
    std::vector<TimelineDish> dishes;
    LocalMinute eat;
    Instant now;
    LocalClock clock;
    ThawSettings thaw = {};
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
    Instant no_later;   ///< the latest start: just the shortest time is left
    Instant at;
    std::chrono::minutes takes{0}; ///< from `at` to the time to eat
};

/// A safe way to the table for a bag that is still frozen at the moment it is asked for.
struct FasterWay {
    ThawMethod method = ThawMethod::ColdWater;
    Instant begin; ///< when it goes into the water or the microwave: the latest that serves
    Instant start; ///< when cooking starts; equal to `begin` from frozen
    std::chrono::minutes takes{0}; ///< the cooking
    CookWindow cook = {};          ///< the same with its ends
};

/// What can be done about a dish at the moment it is asked for.
enum class Outlook {
    InTime,       ///< as planned
    FasterWay,    ///< too late to thaw as planned, but `ways` still serve
    OnlyIfThawed, ///< no way serves a frozen bag; one that was thawed in time can be cooked
    TooLate,      ///< nothing serves
};

/// What is cooked beside a dish.
struct SideWindow {
    Instant at;           ///< when it is started
    Instant ready;        ///< when it is
    std::size_t side = 0; ///< index of the package's `sides`
};

struct DishTimeline {
    std::optional<ThawWindow> thaw; ///< as planned; nothing when cooked from frozen
    std::optional<CookWindow> cook; ///< nothing without a usable cooking time
    Outlook outlook = Outlook::InTime;
    std::vector<FasterWay> ways;   ///< in the agencies' order; the events are those of the first
    std::vector<SideWindow> sides; ///< as its package's
};

enum class TimelineStep { Thaw, Look, Start, Side, Add, Ready };

struct TimelineEvent {
    Instant at;
    TimelineStep what = TimelineStep::Thaw;
    std::size_t dish = 0;                             ///< index of the request's dish
    std::optional<std::size_t> finish = std::nullopt; ///< for Add: index of its package's `finish`
    std::optional<std::size_t> side = std::nullopt;   ///< for Side: index of its package's `sides`
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

/// The remark that says a way with its times, and those that go with it: what to mind.
TimelineRemark remark_of(const FasterWay& way, std::size_t dish);
std::vector<TimelineRemark> cautions_of(ThawMethod method, std::size_t dish);

/// Whether nothing stands against it: no remark says that it cannot be done.
bool can_be_done(const Timeline& line);

/// The request with each dish thawed by the first of the methods on its label that still serves
/// the time to eat. Where none does, or there is but one, a dish stays as it is.
TimelineRequest with_thaw_in_time(TimelineRequest request);

/// Works backwards from the time to eat: cooking starts its middle time before, and as long as the
/// middle has to stay hot, finishing ingredients go in between, thawing starts its lead before
/// cooking. A cooking time is taken as written: for thawed food, unless the package's thaw method
/// is FromFrozen.
///
/// A bag that may be thawed before it can be used, and hardly keeps, is to be looked at in between.
/// Where the planned start is past but the shortest time still fits, cooking is planned from now.
/// Where a bag can no longer thaw as planned, each faster safe way that still fits is offered: the
/// refrigerator on a rack, cold water, microwave, and from frozen where a time for that is
/// published. The dish's events are then those of the first of them; where there is none, those
/// that remain if it was thawed in time; where that is too late too, it has no events. A frozen bag
/// that is meant for a slow cooker gets none either. Cooking times and finishing offsets that are
/// negative or longer than 14 days are not usable.
Timeline timeline(const TimelineRequest& request);

} // namespace thawslip::kitchen
