#include "kitchen/heat/thaw_time.h"

#include "kitchen/heat/plank.h"

#include <algorithm>
#include <cmath>

namespace thawslip::kitchen {

namespace {

/// Slab factors from the Stefan number (heat above freezing) and the Plank number (below it),
/// each as a share of the heat of melting.
ShapeFactors cleland_slab(double stefan, double plank) {
    return {.p = 0.5 * (0.7754 + 2.2828 * stefan * plank),
            .r = 0.125 * (0.4271 + 2.1220 * stefan - 1.4847 * stefan * stefan)};
}

/// By how much Cleland's formula is too long in the still air of a refrigerator.
double overrated(double celsius, Length slab) {
    return 0.94 + 0.22 * std::exp(-(celsius - 1.0) / 1.9) +
           0.022 * std::log(slab.in_millimetres() / 75.0);
}

} // namespace

Result<Seconds, HeatFault> thaw_time(const HeatProperties& food, Length thickness,
                                     Surroundings medium, double start) {
    const double metres = thickness.in_millimetres() / 1000.0;
    if (!(metres > 0.0) || !(medium.coefficient > 0.0))
        return Failure{HeatFault::NoSuchSize};
    if (!(medium.celsius >= 1.0))
        return Failure{HeatFault::MediumTooCold};
    if (medium.celsius > 21.0)
        return Failure{HeatFault::MediumTooWarm};
    if (!(start <= -10.0 && start >= -40.0))
        return Failure{HeatFault::OutsideFormula};

    const double difference = medium.celsius - food.freezing_point;
    const double melting = food.enthalpy_0_to_minus_10;
    const double stefan = food.heat_unfrozen * difference / melting;
    const double plank = food.heat_frozen * (food.freezing_point - start) / melting;
    return plank_time({.heat = food.density * melting,
                       .difference = difference,
                       .thickness = metres,
                       .coefficient = medium.coefficient,
                       .conductivity = food.conductivity_unfrozen},
                      cleland_slab(stefan, plank));
}

Result<Seconds, HeatFault> thaw_time_in_air(const HeatProperties& food, const LyingBag& bag,
                                            Pace pace, Surroundings air, double start) {
    const double mean_path = 2.0 * food.conductivity_unfrozen / air.coefficient;
    const BagShape shape = bag_shape(bag, pace, mean_path);
    const auto slab = thaw_time(food, shape.slab, air, start);
    if (!slab)
        return slab;
    return slab.value() / (overrated(air.celsius, shape.slab) * rim_factor(shape, mean_path));
}

Seconds face_stays_cold(const HeatProperties& food, Surroundings water, double limit) {
    if (!(water.celsius > limit))
        return Seconds{std::chrono::hours{10'000}};
    const double celsius = std::max(water.celsius, 10.0); // in colder water it stays so for longer
    const double film = food.conductivity_unfrozen / water.coefficient; // m of thawed food
    const double difference = celsius - food.freezing_point;
    const double layer = film * (difference / (celsius - limit) - 1.0);
    const double heat = food.density * food.enthalpy_0_to_minus_10;
    return Seconds{heat / difference / food.conductivity_unfrozen *
                   (layer * film + layer * layer / 2.0)};
}

} // namespace thawslip::kitchen
