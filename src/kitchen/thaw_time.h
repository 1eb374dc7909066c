#pragma once

#include "base/length.h"
#include "base/result.h"
#include "kitchen/heat_properties.h"

namespace thawslip::kitchen {

/// Time until the middle of a slab, frozen through at `start` °C, reaches 0 °C, warmed at both
/// faces: Plank's equation with the factors that Cleland et al. fitted.
///
/// D. J. Cleland, A. C. Cleland, R. L. Earle, S. J. Byrne, Int. J. Refrigeration 9:220, 1986,
/// coefficients from memory. Against the enthalpy model in tests/conformance/heat, thickness 15 to
/// 80 mm: within 4 % in a refrigerator of 3–5 °C, up to 10 % long at 2 °C and 10 % short at 10 °C,
/// within 4 % in water of 10 °C, up to 10 % long in water of 20 °C.
///
/// \returns the time, or NoSuchSize, MediumTooCold (below 1 °C: melting crawls), MediumTooWarm
///          (above 21 °C, where no food is thawed) or OutsideFormula (start not −10 to −40 °C)
Result<Seconds, HeatFault> thaw_time(const HeatProperties& food, Length thickness,
                                     Surroundings medium, double start);

/// How much faster than an endless slab a flat bag thaws because its rim is warmed too.
struct RimFactors {
    double least = 1.0; ///< surely: for reckoning how long thawing takes at most
    double most = 1.0;  ///< at the utmost: for reckoning how soon it may be thawed
};

/// The bag is taken as a disc, the outline with the least rim for its area, and as no narrower
/// than it is thick. Both factors are ends of the one formula for the equivalent heat-transfer
/// dimensionality of Cleland, Cleland and Earle (1987, from memory),
/// 1 + 2 (1 + 2/Bi)/(β² + 2β/Bi) with Bi = h (D/2)/k and β = diameter/thickness: `most` is that
/// formula, exact where only the ratio of surface to volume counts; `least` is its end for large
/// Bi, because the middle of a wide bag hardly feels its rim. The enthalpy model lies between the
/// two in air (Bi below 1); in water it may lie below both.
/// \pre litres, thickness and coefficient are positive
RimFactors rim_factors(const HeatProperties& food, double litres, Length thickness,
                       double coefficient);

} // namespace thawslip::kitchen
