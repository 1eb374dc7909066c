#include "kitchen/freezing_lead.h"

#include "kitchen/freezing_time.h"

namespace thawslip::kitchen {

std::optional<std::chrono::minutes> freezing_lead(std::optional<Length> thickness,
                                                  const ThawSettings& settings) {
    constexpr double coefficient = 8.0;
    if (!thickness) {
        return std::nullopt;
    }
    const auto time =
        freezing_time(settings.food, *thickness, {settings.freezer_celsius, coefficient}, {});
    if (!time) {
        return std::nullopt;
    }
    return std::chrono::ceil<std::chrono::hours>(time.value() * (1.0 + settings.margin));
}

} // namespace thawslip::kitchen
