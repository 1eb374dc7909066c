#include "kitchen/timeline/timeline_remark.h"

#include <cassert>
#include <iterator>

namespace thawslip::kitchen {

namespace {

using enum RemarkId;
using enum RemarkWeight;

constexpr std::string_view big_thaw = "USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013";
constexpr std::string_view leftovers = "USDA FSIS, Leftovers and Food Safety";
constexpr std::string_view slow_cookers = "USDA FSIS, Slow Cookers and Food Safety";

// In words, a value that is a point in time stands for the clock's time, a span for its length.
constexpr RemarkRule rules[] = {
    {EatIsPast, CannotBeDone, "eat_is_past", "The time to eat, {0}, is past already.", ""},
    {EatSkipped, Caution, "eat_skipped",
     "The clock is put on over the time to eat; it is taken as {0}.", ""},
    {EatRepeated, Caution, "eat_repeated",
     "The clock shows the time to eat twice that day; the first one is meant.", ""},
    {ClockForward, Note, "clock_forward",
     "At {0} the clock will have gone forward by {1}. The times given allow for it.", ""},
    {ClockBack, Note, "clock_back",
     "At {0} the clock will have gone back by {1}. The times given allow for it.", ""},
    {ThawSizeUnknown, Caution, "thaw_size_unknown",
     "Neither weight nor thickness is known: {0} is the least for a small bag. Allow more for a "
     "large one.",
     big_thaw},
    {ThawThicknessUnknown, Note, "thaw_thickness_unknown",
     "The thickness is not known: {0} to thaw is the rule for the weight.", big_thaw},
    {ThawWeightUnknown, Note, "thaw_weight_unknown",
     "The weight is not known: {0} to thaw is reckoned without it.", ""},
    {ThawNotReckoned, CannotBeDone, "thaw_not_reckoned",
     "Food does not thaw safely at the temperature that is set for the refrigerator or the water.",
     big_thaw},
    {ThawWindowTight, Caution, "thaw_window_tight",
     "It may be thawed before the last moment for cooking it: look earlier, and cook it within "
     "{0} of thawing.",
     leftovers},
    {ThawWindowTightToday, Caution, "thaw_window_tight_today",
     "It may be thawed before the last moment for cooking it: look earlier, and cook it on the day "
     "it has thawed.",
     leftovers},
    {ThawTooLate, Caution, "thaw_too_late",
     "It had to start thawing by {0}. If it is still frozen, do not hurry it on the counter or in "
     "hot water.",
     big_thaw},
    {ThawOnRack, Note, "thaw_on_rack",
     "Still possible in the refrigerator, by itself on a rack: in by {0}, then cooking from {1}.",
     big_thaw},
    {ThawByWater, Note, "thaw_by_water",
     "Still possible in cold water: in by {0}, then cooking from {1}.", big_thaw},
    {ThawByMicrowave, Note, "thaw_by_microwave",
     "Still possible in the microwave: in by {0}, then cooking from {1}.", big_thaw},
    {CookFromFrozen, Note, "cook_from_frozen",
     "Still possible from frozen: cooking from {0}, for {1}.",
     "USDA FSIS, as reprinted in an appliance booklet (times from memory)"},
    {ColdWaterRules, Caution, "cold_water_rules",
     "In a leak-proof bag, under cold water of at most 21 °C (70 °F), changed every 30 minutes.",
     big_thaw},
    {CookAtOnce, Caution, "cook_at_once", "Cook it as soon as it is thawed; it does not keep.",
     big_thaw},
    {IfThawed, Note, "if_thawed", "If it has thawed already, cook it from {0}, {1} at the latest.",
     ""},
    {IfThawedAt, Note, "if_thawed_at", "If it has thawed already, start cooking it at {0}.", ""},
    {FrozenMiddle, Caution, "frozen_middle", "Measure in the middle: it is the last to get hot.",
     big_thaw},
    {NoWayInTime, CannotBeDone, "no_way_in_time",
     "If it is still frozen, no safe way is quick enough: eat something else. The soonest it can "
     "be ready is {0}.",
     big_thaw},
    {FrozenInSlowCooker, CannotBeDone, "frozen_in_slow_cooker",
     "Never from frozen into a slow cooker: thaw it first.", slow_cookers},
    {CookTimeUnknown, Caution, "cook_time_unknown",
     "No usable cooking time is given: it is thawed by the time to eat, so thaw and start it "
     "earlier by as long as it cooks.",
     ""},
    {StartNow, Caution, "start_now",
     "It should have started at {0}. Started now, it is not too late; the latest is {1}.", ""},
    {StartTooLate, CannotBeDone, "start_too_late",
     "Too late to start: the latest was {0}. If it is thawed, the soonest it can be ready is {1}.",
     ""},
    {FrozenStartTooLate, CannotBeDone, "frozen_start_too_late",
     "Too late to start: the latest was {0}. Eat something else; the soonest it can be ready is "
     "{1}.",
     ""},
    {FinishTimeUnknown, Caution, "finish_time_unknown",
     "When to add it cannot be told without a usable cooking time.", ""},
    {FinishBeforeStart, Caution, "finish_before_start",
     "It is to go in {0} before the end, but the whole cooking takes {1}: add it at the start.",
     ""},
    {FinishAfterReady, Caution, "finish_after_ready",
     "It is to go in after {0}, but the whole cooking takes {1}: add it at the end.", ""},
};

constexpr bool in_order() {
    std::size_t position = 0;
    for (const auto& rule : rules) {
        if (static_cast<std::size_t>(rule.id) != position++)
            return false;
    }
    return true;
}
static_assert(in_order(), "one row for every RemarkId, in its order");

} // namespace

std::span<const RemarkRule> remark_rules() {
    return rules;
}

const RemarkRule& rule_of(RemarkId id) {
    const auto position = static_cast<std::size_t>(id);
    assert(position < std::size(rules) && "a remark without a row");
    return rules[position];
}

} // namespace thawslip::kitchen
