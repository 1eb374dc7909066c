#pragma once

#include "base/length.h"
#include "kitchen/day.h"
#include "kitchen/heat/heat_properties.h"

#include <optional>

namespace thawslip::kitchen {

/// How much room bags take in a freezer, as far as their sizes are known. Gaps between them and the
/// bags themselves are not counted.
struct Room {
    int bags = 0;              ///< all of them
    double litres = 0.0;       ///< of those with a weight, frozen
    int unweighed = 0;         ///< how many have none
    Length stack = {};         ///< of those with a thickness, lying flat, each on the one before
    int unmeasured = 0;        ///< how many have none
    double largest_face = 0.0; ///< cm² of the largest bag with both, lying flat

    Room& operator+=(const Room& more);
};

/// Litres of a food of this weight once it is frozen. Its water grows by a twelfth as it turns to
/// ice: 997.2 kg/m³ and 916.9 - 0.1307 t at t °C (Y. Choi and M. R. Okos, "Effects of temperature
/// and composition on the thermal properties of foods", 1986, read in a copy), here at -18 °C, of a
/// food of 1050 kg/m³ whose water freezes as heat_properties.h says. Where it may be either, as a
/// soup, which takes more.
double frozen_litres(Mass weight, Wetness wetness);

/// Of all bags of a package.
Room room_of(const Package& package, Wetness wetness);

/// What a freezer holds already, by the labels that were printed and what was noted of them.
struct FreezerHolds {
    int bags = 0;
    double litres = 0.0; ///< of those with a weight
    int unweighed = 0;
};

/// Whether what bags take is known of all of them: those at hand, and those in the freezer already.
bool are_all_weighed(const Room& room, const std::optional<FreezerHolds>& holds);

/// How full bags make a freezer, with what it holds.
enum class Fill {
    Fits,
    Tight, ///< beyond `usable_share`
    Over   ///< beyond the freezer itself
};

/// Of a freezer's litres the share that flat bags fill: baskets, walls and gaps take the rest.
/// Common practice, no source.
inline constexpr double usable_share = 0.75;

/// \param held litres that are taken already
Fill fill_of(double freezer_litres, double needed, double held);

} // namespace thawslip::kitchen
