#pragma once

#include "kitchen/heat/bag_shape.h"
#include "kitchen/heat/heat_properties.h"

#include <optional>

namespace thawslip::kitchen {

/// The two marks of the FDA Food Code, 3-501.14 (Cooling): from 57 °C (135 °F) to 21 °C (70 °F)
/// within 2 h, and to 5 °C (41 °F) within 6 h in all.
struct CoolingMarks {
    std::optional<Seconds> to_21; ///< from 57 °C; nothing: it never gets there
    std::optional<Seconds> to_5;  ///< from 57 °C too
};

/// What cools a filled bag, and how well while it is hot and when it is not any longer.
struct CoolingMedium {
    double celsius = 0.0;
    double coefficient_hot = 0.0;  ///< above 21 °C, W/(m² K)
    double coefficient_cool = 0.0; ///< below
};

/// A refrigerator: 6 W/(m² K), the middle of the 5–7 that Anderson, Sun, Erdogdu and Singh measured
/// for meat (Int. J. Refrigeration 27(1):63–72, 2004), and 8 while the bag is hot, where convection
/// and radiation both carry more (McAdams's formulas for plates give 8–10; from memory).
CoolingMedium refrigerator_air(double celsius);

/// Ice and water, stirred now and then: 0 °C, 100 W/(m² K), from memory; the bag's film and the
/// food inside set the pace.
CoolingMedium ice_water();

/// How long the middle of a filled bag that lies so takes to cool, at the slowest: the first term
/// of the series for a slab and for a cylinder, whose rates add (Carslaw and Jaeger), their roots
/// by 1/(1/Bi + 4/π²) and 1/(1/2Bi + 1/5.783), which join the ends for small and for large Bi and
/// are up to 6 % slow between them. Without a volume there is no cylinder. In ice water, where the
/// middle of a thick bag lags, it is up to 8 % short of the enthalpy model in
/// tests/conformance/heat. \pre thickness and coefficients are positive
CoolingMarks cooling_marks(const HeatProperties& food, const LyingBag& bag,
                           const CoolingMedium& medium);

} // namespace thawslip::kitchen
