#include "kitchen/heat/bag_shape.h"

#include <cmath>
#include <numbers>

namespace thawslip::kitchen {

namespace {

/// What the face it lies on is worth, as a share of the open one.
constexpr double quickest_tray = 0.5;

Length evened(Length thickness, double share, double mean_path) {
    const double metres = thickness.in_millimetres() / 1000.0;
    return thickness * (2.0 * (mean_path + share * metres) /
                        (mean_path * (1.0 + share) + 2.0 * share * metres));
}

Length slab_of(Length thickness, Placing placing, Pace pace, double mean_path) {
    const bool slowest = pace == Pace::Slowest;
    switch (placing) {
    case Placing::Rack: return thickness;
    case Placing::Tray: return evened(thickness, slowest ? 0.0 : quickest_tray, mean_path);
    case Placing::Stacked: break;
    }
    return thickness * (slowest ? 3.0 : 2.0);
}

} // namespace

BagShape bag_shape(const LyingBag& bag, Pace pace, double mean_path) {
    BagShape shape{slab_of(bag.thickness, bag.placing, pace, mean_path), {}};
    if (bag.litres) {
        const double square_millimetres = *bag.litres * 1e6 / bag.thickness.in_millimetres();
        shape.diameter =
            Length::millimetres(2.0 * std::sqrt(square_millimetres / std::numbers::pi));
    }
    return shape;
}

double rim_factor(const BagShape& shape, double mean_path) {
    if (!shape.diameter)
        return 1.0;
    const double ratio = shape.diameter->in_millimetres() / shape.slab.in_millimetres();
    const double two_over_biot = 2.0 * mean_path / (shape.slab.in_millimetres() / 1000.0);
    const double wide = 1.0 + 2.0 / (ratio * ratio);
    const double lumped =
        1.0 + 2.0 * (1.0 + two_over_biot) / (ratio * ratio + ratio * two_over_biot);
    if (lumped <= wide)
        return lumped;
    return wide + (lumped - wide) / (1.0 + std::pow(ratio / 7.0, 2.5));
}

} // namespace thawslip::kitchen
