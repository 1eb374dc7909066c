#pragma once

#include "kitchen/heat/thaw_lead.h"

#include <chrono>
#include <vector>

namespace thawslip::kitchen {

/// A food that thaws through, from `start` °C, in surroundings of `medium` °C.
struct Thawing {
    HeatProperties food;
    double start = -18.0;
    double medium = 4.0;
    Seconds thawed{0.0}; ///< when its middle is at 0 °C
};

/// The temperature of the middle, in °C, so long after the food was put there.
///
/// The formulas of thaw_time.h say when the middle is at 0 °C, and nothing of the way there. That
/// is a heat balance of the food as one lump: what it takes up is as much as it is colder than its
/// surroundings, dH/dt = u (T_medium − T), with the enthalpy H(T) that its properties have (the
/// share Tf/T of the water is liquid below the freezing point Tf, so the middle hardly warms there
/// while ice melts), and the one unknown, u, such that it is at 0 °C when the printed time says
/// so. Its integral, with C = dH/dT = c_frozen + A/T² + B/T below Tf, is closed:
///     ∫ C/(m − T) dT = (A/m² + B/m) ln|T| − (c_frozen + A/m² + B/m) ln(m − T) − A/(m T)
/// and above Tf the rest of the difference dies out exponentially (Newton's law of cooling).
/// Derived here, from the definitions alone. That a lump will do, for bags are thin and the air
/// gives little (a Biot number of 0.1 to 0.5), is what tests/conformance/heat holds against the
/// enthalpy model: for slabs of 15 to 90 mm, dish and soup, from −12 °C on within 0.5 K in a
/// refrigerator of 2 to 7 °C, and within 2 K in water of 10 °C, where the middle lags.
/// \pre start < freezing point < 0 < medium; thawed > 0
double core_celsius(const Thawing& thawing, Seconds after);

/// Between which temperatures the middle of a bag is, so long after it was put there.
struct CorePoint {
    std::chrono::minutes after{0};
    double low = 0.0; ///< °C, where it thaws as slowly as it may
    double high = 0.0;
};

/// The course from the freezer's temperature until `until`, or the end of the lead if that is
/// later. The low one is at 0 °C at the end of `lead`, which is printed as what to allow, and the
/// high one at its soonest, or in water, where one figure is printed, with it; both are among the
/// points. Of a bag that may be a dish or a soup the lower and the higher of both. \param settings
/// settings_for the package \returns nothing for the microwave, which warms unevenly, and from
/// frozen
std::vector<CorePoint> core_course(const ThawLead& lead, const ThawSettings& settings,
                                   std::chrono::minutes until);

/// What the bag is warmed by, in °C, where there is a course.
double medium_celsius(ThawMethod method, const ThawSettings& settings);

} // namespace thawslip::kitchen
