#include "kitchen/timeline_remark.h"

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
    {EatIsPast, "eat_is_past", CannotBeDone, "The time to eat, {0}, is past already.", ""},
    {EatSkipped, "eat_skipped", Caution,
     "The clock is put on over the time to eat; it is taken as {0}.", ""},
    {EatRepeated, "eat_repeated", Caution,
     "The clock shows the time to eat twice that day; the first one is meant.", ""},
    {ClockForward, "clock_forward", Note,
     "At {0} the clock will have gone forward by {1}. The times given allow for it.", ""},
    {ClockBack, "clock_back", Note,
     "At {0} the clock will have gone back by {1}. The times given allow for it.", ""},
    {ThawSizeUnknown, "thaw_size_unknown", Caution,
     "Neither weight nor thickness is known: {0} is the least for a small bag. Allow more for a "
     "large one.",
     big_thaw},
    {ThawThicknessUnknown, "thaw_thickness_unknown", Note,
     "The thickness is not known: {0} to thaw is the rule for the weight.", big_thaw},
    {ThawWeightUnknown, "thaw_weight_unknown", Note,
     "The weight is not known: {0} to thaw is reckoned without it.", ""},
    {ThawNotReckoned, "thaw_not_reckoned", CannotBeDone,
     "Food does not thaw safely at the temperature set for the refrigerator or the water.",
     big_thaw},
    {ThawWindowTight, "thaw_window_tight", Caution,
     "It may be thawed before the last moment for cooking it: look earlier, and cook it within "
     "{0} of being thawed.",
     leftovers},
    {ThawTooLate, "thaw_too_late", Caution,
     "It had to start thawing by {0}. If it is still frozen, do not hurry it on the counter or in "
     "hot water.",
     big_thaw},
    {ThawByWater, "thaw_by_water", Note,
     "Still possible in cold water: in by {0}, then cooking from {1}.", big_thaw},
    {ThawByMicrowave, "thaw_by_microwave", Note,
     "Still possible in the microwave: in by {0}, then cooking from {1}.", big_thaw},
    {CookFromFrozen, "cook_from_frozen", Note,
     "Still possible from frozen: cooking from {0}, for {1}, about half as long again.",
     "USDA FSIS, as reprinted in an appliance booklet (times from memory)"},
    {ColdWaterRules, "cold_water_rules", Caution,
     "In a leak-proof bag, under cold water of at most 21 °C, changed every 30 minutes.", big_thaw},
    {CookAtOnce, "cook_at_once", Caution, "Cook it as soon as it is thawed; it does not keep.",
     big_thaw},
    {NoWayInTime, "no_way_in_time", CannotBeDone,
     "No safe way is quick enough. If it is still frozen, the soonest it can be ready is {0}.",
     big_thaw},
    {FrozenInSlowCooker, "frozen_in_slow_cooker", CannotBeDone,
     "Never from frozen into a slow cooker: thaw it first.", slow_cookers},
    {CookTimeUnknown, "cook_time_unknown", Caution,
     "No usable cooking time is given: it is thawed by the time to eat, so thaw and start it "
     "earlier by as long as it cooks.",
     ""},
    {StartNow, "start_now", Caution,
     "It should have started at {0}. Started now, it is not too late; the latest is {1}.", ""},
    {StartTooLate, "start_too_late", CannotBeDone,
     "Too late to start: the latest was {0}. If it is thawed, the soonest it can be ready is {1}.",
     ""},
    {FinishTimeUnknown, "finish_time_unknown", Caution,
     "When to add it cannot be told without a usable cooking time.", ""},
    {FinishBeforeStart, "finish_before_start", Caution,
     "It is to go in {0} before the end, but the whole cooking takes {1}: add it at the start.",
     ""},
    {FinishAfterReady, "finish_after_ready", Caution,
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
