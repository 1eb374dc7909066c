#include "kitchen/heat/freezing_time.h"

#include "kitchen/heat/plank.h"

namespace thawslip::kitchen {

Result<Seconds, HeatFault> freezing_time(const HeatProperties& food, Length thickness,
                                         Surroundings air, Cooling cooling) {
    const double metres = thickness.in_millimetres() / 1000.0;
    if (!(metres > 0.0) || !(air.coefficient > 0.0))
        return Failure{HeatFault::NoSuchSize};

    const double mean_freezing = 1.8 + 0.263 * cooling.core + 0.105 * air.celsius;
    if (!(cooling.start > food.freezing_point) || !(cooling.core < mean_freezing))
        return Failure{HeatFault::OutsideFormula};
    if (!(air.celsius < cooling.core))
        return Failure{HeatFault::MediumTooWarm};

    PhaseChange above{.heat = food.density * food.heat_unfrozen * (cooling.start - mean_freezing),
                      .difference = (cooling.start + mean_freezing) / 2.0 - air.celsius,
                      .thickness = metres,
                      .coefficient = air.coefficient,
                      .conductivity = food.conductivity_frozen};
    PhaseChange below = above;
    below.heat =
        food.density * (food.latent_heat + food.heat_frozen * (mean_freezing - cooling.core));
    below.difference = mean_freezing - air.celsius;
    // Pham writes dc/h (1 + Bi/2) with half the thickness; that is Plank's slab with all of it.
    return plank_time(above, plank_slab) + plank_time(below, plank_slab);
}

Result<Seconds, HeatFault> freezing_time_in_air(const HeatProperties& food, const LyingBag& bag,
                                                Surroundings air, Cooling cooling) {
    const double mean_path = 2.0 * food.conductivity_frozen / air.coefficient;
    const BagShape shape = bag_shape(bag, Pace::Slowest, mean_path);
    const auto slab = freezing_time(food, shape.slab, air, cooling);
    if (!slab)
        return slab;
    return slab.value() / rim_factor(shape, mean_path);
}

} // namespace thawslip::kitchen
