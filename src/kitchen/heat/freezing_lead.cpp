#include "kitchen/heat/freezing_lead.h"

#include "kitchen/heat/freezing_time.h"

namespace thawslip::kitchen {

std::optional<std::chrono::minutes> freezing_lead(std::optional<Length> thickness,
                                                  std::optional<Mass> weight,
                                                  const ThawSettings& settings) {
    constexpr double coefficient = 8.0;
    if (!thickness || !(*thickness > Length{})) {
        return std::nullopt;
    }
    const auto food = slowest_food(settings.wetness);
    LyingBag bag{*thickness, {}, settings.placing};
    if (weight && weight->grams > 0.0) {
        bag.litres = weight->grams / food.density;
    }
    const auto time = freezing_time_in_air(food, bag, {settings.freezer_celsius, coefficient}, {});
    if (!time) {
        return std::nullopt;
    }
    return std::chrono::ceil<std::chrono::hours>(time.value() * (1.0 + settings.margin));
}

} // namespace thawslip::kitchen
