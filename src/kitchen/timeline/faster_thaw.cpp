#include "kitchen/timeline/faster_thaw.h"

#include "kitchen/cooking/cook_time.h"
#include "kitchen/cooking/thaw_pairing.h"
#include "kitchen/heat/thaw_ceiling.h"
#include "kitchen/timeline/cook_window.h"

#include <algorithm>

namespace thawslip::kitchen {

namespace {

using std::chrono::minutes;

/// How long a way takes before cooking and in cooking; nothing where it is not allowed.
struct Spans {
    minutes lead;
    TimeRange cooking;
};

/// On a rack, where it was meant to lie slower: no way where it would be thawed for longer than it
/// keeps.
std::optional<Spans> on_a_rack(const TimelineDish& dish, ThawSettings settings) {
    const auto& package = dish.package;
    if (package.thaw.method != ThawMethod::Refrigerator || settings.placing == Placing::Rack)
        return std::nullopt;
    settings.placing = Placing::Rack;
    const auto lead =
        thaw_lead(ThawMethod::Refrigerator, package.thickness, package.weight, settings);
    if (!lead || lead.value().missing != MissingSize::None ||
        lead.value().lead - lead.value().soonest > dish.keeps_thawed)
        return std::nullopt;
    return Spans{lead.value().lead, usable_cook_time(dish).value_or(TimeRange{})};
}

/// What is thawed fast is cooked at once: a cake and butter are not.
bool is_eaten_so(const TimelineDish& dish) {
    return dish.served == Served::AsItIs || (!dish.package.cook && !dish.raw);
}

std::optional<Spans> spans_of(ThawMethod method, const TimelineDish& dish,
                              const ThawSettings& settings) {
    if (method == ThawMethod::Refrigerator)
        return on_a_rack(dish, settings);
    const auto& package = dish.package;
    const auto cook_time = usable_cook_time(dish);
    if (is_eaten_so(dish) || pairing(method, heat_of(package)).passage == Passage::Refused)
        return std::nullopt;
    if (method == ThawMethod::FromFrozen) {
        if (!cook_time || !dish.counts_from_frozen)
            return std::nullopt;
        return Spans{
            minutes{0},
            for_all_bags(dish, with_hold(from_frozen(*usable_cook_time(package)), dish.hold))};
    }
    const auto lead = thaw_lead(method, package.thickness, package.weight, settings);
    if (!lead || past_ceiling(method, package.thickness, package.weight, dish.served, settings))
        return std::nullopt;
    const bool each = method == ThawMethod::Microwave;
    return Spans{each ? in_turn(dish, lead.value().lead) : lead.value().lead,
                 cook_time.value_or(TimeRange{})};
}

} // namespace

FasterWays faster_ways(const TimelineDish& dish, const ThawSettings& settings, Instant eat,
                       Instant now) {
    FasterWays found;
    for (const auto method : {ThawMethod::Refrigerator, ThawMethod::ColdWater,
                              ThawMethod::Microwave, ThawMethod::FromFrozen}) {
        const auto spans = spans_of(method, dish, settings);
        if (!spans)
            continue;
        const Instant first_start = now + spans->lead;
        CookWindow window = cook_window(spans->cooking, eat, first_start);
        if (spans->lead > minutes{0})
            window.no_earlier = window.at; // no sooner than it has thawed
        if (first_start <= window.no_later)
            found.ways.push_back(
                {method, window.at - spans->lead, window.at, window.takes, window});
        const Instant ready = first_start + middle_of(spans->cooking);
        found.soonest_ready = std::min(found.soonest_ready.value_or(ready), ready);
    }
    return found;
}

} // namespace thawslip::kitchen
