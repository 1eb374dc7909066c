#pragma once

#include "base/length.h"
#include "base/result.h"
#include "kitchen/heat/bag_shape.h"
#include "kitchen/heat/heat_properties.h"

namespace thawslip::kitchen {

/// From where to where the middle of the food is cooled, in °C.
struct Cooling {
    double start = 4.0;
    double core = -15.0;
};

/// Time to freeze a slab from both faces, by Pham (1986): the heat above a mean freezing
/// temperature and the heat below it, each over its own temperature difference.
///
/// Q. T. Pham, J. Food Technology 21:209, 1986, as in Singh and Heldman, "Introduction to Food
/// Engineering", chapter 7; coefficients from memory. Against the enthalpy model in
/// tests/conformance/heat it is within 3 % for a core of −15 °C in air of −18 °C.
///
/// \returns the time, or NoSuchSize, MediumTooWarm (the air is not below the core wanted, nor
///          below the mean freezing temperature) or OutsideFormula (start not above freezing)
Result<Seconds, HeatFault> freezing_time(const HeatProperties& food, Length thickness,
                                         Surroundings air, Cooling cooling);

/// The same for a bag that lies so in a freezer, its rim counted, at the slowest.
Result<Seconds, HeatFault> freezing_time_in_air(const HeatProperties& food, const LyingBag& bag,
                                                Surroundings air, Cooling cooling);

} // namespace thawslip::kitchen
