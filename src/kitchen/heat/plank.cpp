#include "kitchen/heat/plank.h"

namespace thawslip::kitchen {

Seconds plank_time(const PhaseChange& change, ShapeFactors shape) {
    const double surface = shape.p * change.thickness / change.coefficient;
    const double layer = shape.r * change.thickness * change.thickness / change.conductivity;
    return Seconds{change.heat / change.difference * (surface + layer)};
}

} // namespace thawslip::kitchen
