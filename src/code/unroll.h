#pragma once

#include "code/finders.h"

#include <vector>

namespace thawslip::code {

/// How a code is bent. Lengths are in the distance that the middles of two finder patterns have on
/// its paper.
struct Bend {
    enum class Around { OneSide, OtherSide };
    Around around = Around::OneSide; ///< along which of the code's sides its paper is curved
    double radius = 1.0;             ///< of what it is wrapped around
    double crest = 0.0;              ///< from the code's middle to where its paper is nearest
};

/// The bends that a code with these finder patterns may have, the likeliest first: one that lies
/// around a bottle looks narrower than it is high, or the other way round.
std::vector<Bend> likely_bends(const Finders& finders);

/// The code as it would be seen if its paper were unrolled flat, upright and larger, with room
/// around it. A cylinder seen from far away: what is as far from its crest as an arc is long is
/// seen as far as the arc's sine. The finder patterns stay where they are.
GreyPicture unrolled(const GreyPicture& picture, const Finders& finders, const Bend& bend);

} // namespace thawslip::code
