#pragma once

#include "base/length.h"
#include "kitchen/day.h"

#include <optional>

namespace thawslip::kitchen {

/// Which end of what may be: how long it takes at most, or how soon it may be done.
enum class Pace { Slowest, Quickest };

/// A bag and how it lies.
struct LyingBag {
    Length thickness;
    std::optional<double> litres; ///< nothing: not known, and its rim does not count
    Placing placing = Placing::Tray;
};

/// A bag as the formulas for heat ask: the slab with both faces open that takes as
/// long, and the rim that helps it.
struct BagShape {
    Length slab;                    ///< thickness of that slab
    std::optional<Length> diameter; ///< of the bag, taken as a disc; nothing: endless sideways
};

/// The slab for a bag that lies so.
///
/// On a rack it is the bag itself. On a tray the lower face is worth between nothing (slowest) and
/// half of the upper one (quickest; no figure is published). Two fronts then meet where both are
/// through at once; with Plank's equation for each, a share s of the coefficient h and m = 2k/h
/// that is a slab of 2D (m + sD)/(m(1 + s) + 2sD): 2D where s is 0, D where s is 1. In a stack of
/// three the slowest is the middle of all three, 3D, and the quickest an outer one, whose inner
/// face gets nothing. Its outline is a disc, which has the least rim for its area. \param mean_path
/// 2k/h in metres: conductivity of the food over the coefficient of its face
BagShape bag_shape(const LyingBag& bag, Pace pace, double mean_path);

/// How much faster than an endless slab such a disc is done because its rim is open too.
///
/// The formula for the equivalent heat-transfer dimensionality of Cleland, Cleland and Earle (1987,
/// from memory), 1 + 2 (1 + 2/Bi)/(β² + 2β/Bi) with Bi = h (D/2)/k and β = diameter/thickness,
/// holds where only the ratio of surface to volume counts; its end for large Bi, 1 + 2/β², where
/// the middle of a wide bag hardly feels its rim. Between the two it is weighed by 1/(1 +
/// (β/7)^2.5), fitted to the enthalpy model in tests/conformance/heat: within 5 % there in air for
/// β of 1 and more, up to 10 % fast for a pile that is taller than wide. Without a diameter it
/// is 1.
double rim_factor(const BagShape& shape, double mean_path);

} // namespace thawslip::kitchen
