#pragma once

#include "base/length.h"
#include "base/result.h"
#include "kitchen/heat/bag_shape.h"
#include "kitchen/heat/heat_properties.h"

namespace thawslip::kitchen {

/// Time until the middle of a slab, frozen through at `start` °C, reaches 0 °C, warmed at both
/// faces: Plank's equation with the factors that Cleland et al. fitted.
///
/// D. J. Cleland, A. C. Cleland, R. L. Earle, S. J. Byrne, Int. J. Refrigeration 9:220, 1986,
/// coefficients from memory; the abstract, which claims 10 %, was read. Against the enthalpy model
/// in tests/conformance/heat, thickness 15 to 80 mm: within 4 % in a refrigerator of 3–5 °C, up to
/// 10 % long at 2 °C and 10 % short at 10 °C, within 4 % in water of 10 °C, up to 10 % long in
/// water of 20 °C.
///
/// \returns the time, or NoSuchSize, MediumTooCold (below 1 °C: melting crawls), MediumTooWarm
///          (above 21 °C, where no food is thawed) or OutsideFormula (start not −10 to −40 °C)
Result<Seconds, HeatFault> thaw_time(const HeatProperties& food, Length thickness,
                                     Surroundings medium, double start);

/// The same for a bag that lies so in a refrigerator, its rim counted.
///
/// Cleland's formula was fitted to warmer surroundings and more of them (Bi of 0.3 and more). In
/// the air of a refrigerator the enthalpy model in tests/conformance/heat wants it divided by 0.945
/// + 0.22 e^(−(T − 1 °C)/1.9 K) + 0.022 ln(D/75 mm), fitted for T from 1 to 8 °C, slabs of 15 to
/// 360 mm and 75 and 88 % of water: within 4 % of the model then.
Result<Seconds, HeatFault> thaw_time_in_air(const HeatProperties& food, const LyingBag& bag,
                                            Pace pace, Surroundings air, double start);

/// How long the face of a frozen piece stays at or below `limit` °C in water, at the least.
///
/// The face gets there when the layer that has thawed is so thick that its resistance takes the
/// rest of the difference; Plank's equation for that layer alone, from one face, leaves out what
/// the frozen core takes up and the melting below the freezing point. The enthalpy model in
/// tests/conformance/heat gives from as long (15 mm in water of 10 °C) to three times as long.
Seconds face_stays_cold(const HeatProperties& food, Surroundings water, double limit);

} // namespace thawslip::kitchen
