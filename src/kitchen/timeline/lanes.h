#pragma once

#include "kitchen/timeline/timeline.h"

#include <chrono>
#include <optional>
#include <span>
#include <vector>

namespace thawslip::kitchen {

/// What a bag of a dish does for a while: thawing for as long as its label allows, waiting thawed
/// until it is cooked, cooking; and beside it, what is cooked to be eaten with it.
enum class Doing { Thawing, Waiting, Cooking, Beside };

struct LaneSpan {
    Doing what = Doing::Thawing;
    Instant from;
    Instant to;
    friend bool operator==(const LaneSpan&, const LaneSpan&) = default;
};

/// One dish of a timeline by itself, for whoever draws it: what goes on for how long, and what has
/// to be done at which moment.
struct Lane {
    std::size_t dish = 0;              ///< index of the timeline's dish
    std::vector<LaneSpan> spans;       ///< none overlaps another, but those of Beside
    std::vector<TimelineEvent> events; ///< in order of time
    bool is_continued = false;         ///< a part of a lane, and not its first
};

/// One for each dish of the timeline, in its order. A dish that cannot be done has neither spans
/// nor events.
std::vector<Lane> lanes_of(const Timeline& line);

/// The part of a lane with `count` of its events from event `first` on, and what goes on until the
/// event after them. \pre first + count <= lane.events.size(), count > 0
Lane part_of(const Lane& lane, std::size_t first, std::size_t count);

/// A length of time that is drawn to one scale.
struct Stretch {
    Instant from; ///< a full hour of the clock
    Instant to;
};

/// How the time of these lanes is best drawn: in one stretch; or, where thawing takes more than
/// twice as long as all that comes after it, in two, so that the last hours can be drawn larger.
/// They meet: the second begins where the first ends. Empty where nothing happens.
std::vector<Stretch> stretches_of(std::span<const Lane> lanes, const LocalClock& clock);

/// Round steps of a clock, each a part of the next: 5 minutes to a day.
std::span<const std::chrono::minutes> clock_steps();

/// A moment at which the clock shows a round time.
struct ClockTick {
    Instant at;
    std::chrono::minutes step{0}; ///< the longest round step that falls on it
};

/// All moments of a stretch at which the clock shows a round time, at most some hundreds of them:
/// of a long stretch only full hours.
std::vector<ClockTick> ticks_of(const Stretch& stretch, const LocalClock& clock);

} // namespace thawslip::kitchen
