#include "kitchen/thaw_time.h"

#include "kitchen/plank.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thawslip::kitchen {

namespace {

/// Slab factors from the Stefan number (heat above freezing) and the Plank number (below it),
/// each as a share of the heat of melting.
ShapeFactors cleland_slab(double stefan, double plank) {
    return {.p = 0.5 * (0.7754 + 2.2828 * stefan * plank),
            .r = 0.125 * (0.4271 + 2.1220 * stefan - 1.4847 * stefan * stefan)};
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

RimFactors rim_factors(const HeatProperties& food, double litres, Length thickness,
                       double coefficient) {
    const double metres = thickness.in_millimetres() / 1000.0;
    const double area = litres / 1000.0 / metres;
    const double diameter = 2.0 * std::sqrt(area / std::numbers::pi);
    const double ratio = std::max(1.0, diameter / metres);
    const double biot = coefficient * metres / 2.0 / food.conductivity_unfrozen;
    return {.least = 1.0 + 2.0 / (ratio * ratio),
            .most = 1.0 + 2.0 * (1.0 + 2.0 / biot) / (ratio * ratio + 2.0 * ratio / biot)};
}

} // namespace thawslip::kitchen
