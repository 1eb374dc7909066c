#include "kitchen/timeline/timeline_remark.h"

#include "base/named.h"
#include "kitchen/sources.h"

namespace thawslip::kitchen {

namespace {

using enum RemarkId;
using enum RemarkWeight;

constexpr std::string_view leftovers = "USDA FSIS, Leftovers and Food Safety";
constexpr std::string_view slow_cookers = "USDA FSIS, Slow Cookers and Food Safety";

constexpr RemarkRule rules[] = {
    {EatIsPast, CannotBeDone, "eat_is_past", ""},
    {EatSkipped, Caution, "eat_skipped", ""},
    {EatRepeated, Caution, "eat_repeated", ""},
    {PastUseBy, CannotBeDone, "past_use_by", ""},
    {PastBest, Caution, "past_best", ""},
    {ClockForward, Note, "clock_forward", ""},
    {ClockBack, Note, "clock_back", ""},
    {ThawSizeUnknown, Caution, "thaw_size_unknown", safe_defrosting},
    {ThawThicknessUnknown, Note, "thaw_thickness_unknown", safe_defrosting},
    {ThawWeightUnknown, Note, "thaw_weight_unknown", ""},
    {ThawNotReckoned, CannotBeDone, "thaw_not_reckoned", safe_defrosting},
    {ThawWindowTight, Caution, "thaw_window_tight", leftovers},
    {ThawWindowTightToday, Caution, "thaw_window_tight_today", leftovers},
    {ThawTooLate, Caution, "thaw_too_late", safe_defrosting},
    {OtherThaw, Note, "other_thaw", ""},
    {ThawOnRack, Note, "thaw_on_rack", safe_defrosting},
    {ThawByWater, Note, "thaw_by_water", safe_defrosting},
    {ThawByMicrowave, Note, "thaw_by_microwave", safe_defrosting},
    {CookFromFrozen, Note, "cook_from_frozen",
     "USDA FSIS, as reprinted in an appliance booklet (times from memory)"},
    {ColdWaterRules, Caution, "cold_water_rules", safe_defrosting},
    {CookAtOnce, Caution, "cook_at_once", safe_defrosting},
    {IfThawed, Note, "if_thawed", ""},
    {IfThawedAt, Note, "if_thawed_at", ""},
    {FrozenMiddle, Caution, "frozen_middle", safe_defrosting},
    {NoWayInTime, CannotBeDone, "no_way_in_time", safe_defrosting},
    {FrozenInSlowCooker, CannotBeDone, "frozen_in_slow_cooker", slow_cookers},
    {CookTimeUnknown, Caution, "cook_time_unknown", ""},
    {FrozenCookTimeUnknown, Caution, "frozen_cook_time_unknown", ""},
    {SeveralBags, Caution, "several_bags", ""},
    {SeveralInMicrowave, Caution, "several_in_microwave", ""},
    {StartNow, Caution, "start_now", ""},
    {StartTooLate, CannotBeDone, "start_too_late", ""},
    {FrozenStartTooLate, CannotBeDone, "frozen_start_too_late", ""},
    {FinishTimeUnknown, Caution, "finish_time_unknown", ""},
    {FinishBeforeStart, Caution, "finish_before_start", ""},
    {FinishAfterReady, Caution, "finish_after_ready", ""},
    {SideLate, Caution, "side_late", ""},
    {SharedAppliance, Caution, "shared_appliance", ""},
};

static_assert(rows_in_order(rules, &RemarkRule::id, SharedAppliance));

} // namespace

std::span<const RemarkRule> remark_rules() {
    return rules;
}

const RemarkRule& rule_of(RemarkId id) {
    return rules[static_cast<std::size_t>(id)];
}

} // namespace thawslip::kitchen
