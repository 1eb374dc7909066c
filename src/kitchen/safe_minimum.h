#pragma once

#include "kitchen/storage.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace thawslip::kitchen {

/// The lowest temperature, in the middle of the food, at which a kind of food is safe to eat.
struct SafeMinimum {
    double celsius = 0.0;             ///< exact: 165 °F is 73.888…
    double least_whole_celsius = 0.0; ///< what the agencies print as whole degrees: 63, 71, 74
    std::chrono::minutes rest{0};     ///< must stand this long before it is cut
    std::chrono::minutes held{0};     ///< must stay that hot this long
    std::string_view source;
};

/// The minimum for one kind under a rule set; the US figure where a rule set has none. Nothing
/// for a kind without a published temperature.
std::optional<SafeMinimum> safe_minimum(FoodKind kind, std::string_view rule_set);

/// The highest of the minimums of several classes: what is inside together must reach it.
std::optional<SafeMinimum> safe_minimum(const StorageTable& table,
                                        std::span<const std::string> foods);

/// Whether a target temperature reaches the minimum, as written in whole degrees by the agencies:
/// 71 °C passes for 160 °F, 74 °C and 73.9 °C for 165 °F, 73 °C does not.
bool reaches(double target_celsius, const SafeMinimum& minimum);

} // namespace thawslip::kitchen
