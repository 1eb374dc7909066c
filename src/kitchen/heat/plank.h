#pragma once

#include "kitchen/heat/heat_properties.h"

namespace thawslip::kitchen {

/// The two shape factors of Plank's equation.
struct ShapeFactors {
    double p = 0.0;
    double r = 0.0;
};

/// Slab with both faces open, and sphere: Plank (1913), as printed in the Encyclopedia of Food
/// Sciences and Nutrition.
inline constexpr ShapeFactors plank_slab{1.0 / 2.0, 1.0 / 8.0};
inline constexpr ShapeFactors plank_sphere{1.0 / 6.0, 1.0 / 24.0};

/// Heat that must cross a growing layer of frozen (or thawed) food.
struct PhaseChange {
    double heat = 0.0;         ///< J/m³ of food
    double difference = 0.0;   ///< K between the phase change and the surroundings, positive
    double thickness = 0.0;    ///< m, the whole of it (or the diameter)
    double coefficient = 0.0;  ///< W/(m² K)
    double conductivity = 0.0; ///< W/(m K) of the layer that grows
};

/// Plank's equation, t = H/ΔT · (P·D/h + R·D²/k).
///
/// With the latent heat as H it is the textbook estimate, which errs both ways: about 30 % short
/// for freezing to −15 °C, 35–65 % long for thawing. It is not used so here; the formulas of
/// freezing_time.h and thaw_time.h are this one with better factors.
/// \pre all members are positive
Seconds plank_time(const PhaseChange& change, ShapeFactors shape);

} // namespace thawslip::kitchen
