#include "damage/raster.h"

#include <algorithm>
#include <cmath>

namespace thawslip::damage {
namespace {

/// Weights of one half of a Gaussian, the middle first, that sum to 1 over both halves.
std::vector<double> gaussian(double sigma) {
    std::vector<double> weights;
    const int reach = static_cast<int>(std::ceil(3.0 * sigma));
    double sum = 0.0;
    for (int i = 0; i <= reach; ++i) {
        weights.push_back(std::exp(-0.5 * i * i / (sigma * sigma)));
        sum += i == 0 ? weights.back() : 2.0 * weights.back();
    }
    for (double& weight : weights) {
        weight /= sum;
    }
    return weights;
}

/// Blurs along one direction; beyond the edge the edge's own value goes on.
Raster blurred_along(const Raster& raster, const std::vector<double>& weights, bool rows) {
    Raster result{raster.width(), raster.height(), 0.0};
    const int last_x = raster.width() - 1;
    const int last_y = raster.height() - 1;
    const int reach = static_cast<int>(weights.size()) - 1;
    for (int y = 0; y <= last_y; ++y) {
        for (int x = 0; x <= last_x; ++x) {
            double sum = 0.0;
            for (int i = -reach; i <= reach; ++i) {
                const double weight = weights[static_cast<std::size_t>(std::abs(i))];
                sum += weight * (rows ? raster.at(std::clamp(x + i, 0, last_x), y)
                                      : raster.at(x, std::clamp(y + i, 0, last_y)));
            }
            result.at(x, y) = sum;
        }
    }
    return result;
}

} // namespace

Raster::Raster(int width, int height, double value)
    : width_{width}, height_{height},
      values_(static_cast<std::size_t>(width) * static_cast<std::size_t>(height), value) {}

Raster blurred(const Raster& raster, double sigma) {
    constexpr double too_little_to_see = 0.2;
    if (sigma < too_little_to_see) {
        return raster;
    }
    const std::vector<double> weights = gaussian(sigma);
    return blurred_along(blurred_along(raster, weights, true), weights, false);
}

Landscape::Landscape(Random& random, double grain) : seed_{random.next()}, grain_{grain} {}

double Landscape::corner(int x, int y) const {
    const auto column = static_cast<std::uint64_t>(static_cast<std::uint32_t>(x));
    const auto row = static_cast<std::uint64_t>(static_cast<std::uint32_t>(y));
    return Random{seed_ ^ (column << 32U | row)}.unit();
}

double Landscape::at(Spot spot) const {
    const double left = std::floor(spot.x / grain_);
    const double top = std::floor(spot.y / grain_);
    const int x = static_cast<int>(left);
    const int y = static_cast<int>(top);
    // Smoothstep, so that the corners of the grid do not show.
    const auto ease = [](double t) { return t * t * (3.0 - 2.0 * t); };
    const double across = ease(spot.x / grain_ - left);
    const double down = ease(spot.y / grain_ - top);
    const double upper = corner(x, y) + (corner(x + 1, y) - corner(x, y)) * across;
    const double lower = corner(x, y + 1) + (corner(x + 1, y + 1) - corner(x, y + 1)) * across;
    return upper + (lower - upper) * down;
}

} // namespace thawslip::damage
