#include "kitchen/heat/cooling_time.h"

#include <cmath>
#include <numbers>

namespace thawslip::kitchen {

namespace {

constexpr double pi_squared = std::numbers::pi * std::numbers::pi;

/// How fast the middle comes near the medium, 1/s.
double rate(const HeatProperties& food, const LyingBag& bag, double coefficient) {
    const double mean_path = 2.0 * food.conductivity_unfrozen / coefficient;
    const BagShape shape = bag_shape(bag, Pace::Slowest, mean_path);
    const double half = shape.slab.in_millimetres() / 2000.0;
    const double slab = 1.0 / (mean_path / 2.0 / half + 4.0 / pi_squared);
    double sum = slab / (half * half);
    if (shape.diameter) {
        const double radius = shape.diameter->in_millimetres() / 2000.0;
        const double round = 1.0 / (mean_path / 4.0 / radius + 1.0 / 5.783);
        sum += round / (radius * radius);
    }
    return food.conductivity_unfrozen / food.density / food.heat_unfrozen * sum;
}

std::optional<Seconds> spent(double from, double to, double medium, double rate) {
    if (!(to > medium))
        return std::nullopt;
    return Seconds{std::log((from - medium) / (to - medium)) / rate};
}

} // namespace

CoolingMedium refrigerator_air(double celsius) {
    return {celsius, 8.0, 6.0};
}

CoolingMedium ice_water() {
    return {0.0, 100.0, 100.0};
}

CoolingMarks cooling_marks(const HeatProperties& food, const LyingBag& bag,
                           const CoolingMedium& medium) {
    const auto first = spent(57.0, 21.0, medium.celsius, rate(food, bag, medium.coefficient_hot));
    const auto then = spent(21.0, 5.0, medium.celsius, rate(food, bag, medium.coefficient_cool));
    return {first, first && then ? std::optional{*first + *then} : std::nullopt};
}

} // namespace thawslip::kitchen
