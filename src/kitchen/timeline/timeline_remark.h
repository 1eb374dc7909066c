#pragma once

#include "kitchen/date.h"
#include "kitchen/timeline/local_clock.h"

#include <chrono>
#include <cstddef>
#include <optional>
#include <span>
#include <string_view>
#include <variant>
#include <vector>

namespace thawslip::kitchen {

/// What a timeline has to say beyond its events. What its values are, the wording tables show.
enum class RemarkId {
    EatIsPast,
    EatSkipped,
    EatRepeated,
    PastUseBy,
    PastBest,
    ClockForward,
    ClockBack,
    ThawSizeUnknown,
    ThawThicknessUnknown,
    ThawWeightUnknown,
    ThawNotReckoned,
    ThawWindowTight,
    ThawWindowTightToday,
    ThawTooLate,
    OtherThaw,
    ThawOnRack,
    ThawByWater,
    ThawByMicrowave,
    CookFromFrozen,
    ColdWaterRules,
    CookAtOnce,
    IfThawed,
    IfThawedAt,
    FrozenMiddle,
    NoWayInTime,
    FrozenInSlowCooker,
    CookTimeUnknown,
    FrozenCookTimeUnknown,
    SeveralBags,
    SeveralInMicrowave,
    StartNow,
    StartTooLate,
    FrozenStartTooLate,
    FinishTimeUnknown,
    FinishBeforeStart,
    FinishAfterReady,
    SideLate,
    SharedAppliance,
};

/// A dish, or one of its sides, that is named where a remark is about several.
struct DishPart {
    std::size_t dish = 0;            ///< index of the request's dish
    std::optional<std::size_t> side; ///< index of that package's `sides`
    friend auto operator<=>(const DishPart&, const DishPart&) = default;
};

using RemarkValue = std::variant<Instant, std::chrono::minutes, Date, std::vector<DishPart>>;

/// One thing to say about the whole timeline, or about one dish, or one finishing ingredient.
struct TimelineRemark {
    RemarkId id = RemarkId::EatIsPast;
    std::optional<std::size_t> dish = std::nullopt;   ///< index of the request's dish
    std::optional<std::size_t> finish = std::nullopt; ///< index of that package's `finish`
    std::vector<RemarkValue> values = {};             ///< `{0}`, `{1}`… of the words
    std::optional<std::size_t> side = std::nullopt;   ///< index of that package's `sides`
};

enum class RemarkWeight { Note, Caution, CannotBeDone };

/// One row of the table: the wording tables hold its words under `timeline.<key>`.
struct RemarkRule {
    RemarkId id;
    RemarkWeight weight;
    std::string_view key;
    std::string_view source; ///< publisher and title; empty where it is arithmetic
};

/// One row for every RemarkId, in its order.
std::span<const RemarkRule> remark_rules();
const RemarkRule& rule_of(RemarkId id);

} // namespace thawslip::kitchen
