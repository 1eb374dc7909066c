#pragma once

#include "support/random.h"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <vector>

namespace thawslip::damage {

using test_support::Random;

/// A place or a step in the picture plane, in the unit that its user names.
struct Spot {
    double x = 0.0;
    double y = 0.0;
};

/// A grey picture: 0 reflects nothing, 1 everything; rows from the top.
class Raster {
public:
    Raster(int width, int height, double value);

    int width() const { return width_; }
    int height() const { return height_; }
    double& at(int x, int y) { return values_[index(x, y)]; }
    double at(int x, int y) const { return values_[index(x, y)]; }
    const std::vector<double>& values() const { return values_; }

    /// Between the four nearest pixels, whose centres stand at halves; `outside` beyond the edge.
    double sample(Spot spot, double outside) const;

private:
    std::size_t index(int x, int y) const {
        return static_cast<std::size_t>(y) * static_cast<std::size_t>(width_) +
               static_cast<std::size_t>(x);
    }
    int width_;
    int height_;
    std::vector<double> values_;
};

inline double Raster::sample(Spot spot, double outside) const {
    const double left = std::floor(spot.x - 0.5);
    const double top = std::floor(spot.y - 0.5);
    const int x = static_cast<int>(left);
    const int y = static_cast<int>(top);
    if (x < 0 || y < 0 || x + 1 >= width_ || y + 1 >= height_) {
        return outside;
    }
    const double right_share = spot.x - 0.5 - left;
    const double lower_share = spot.y - 0.5 - top;
    const double upper = at(x, y) + (at(x + 1, y) - at(x, y)) * right_share;
    const double lower = at(x, y + 1) + (at(x + 1, y + 1) - at(x, y + 1)) * right_share;
    return upper + (lower - upper) * lower_share;
}

/// The raster blurred by a Gaussian of standard deviation `sigma` pixels.
Raster blurred(const Raster& raster, double sigma);

/// A smooth random landscape of values from 0 to 1, whose hills are about `grain` units wide.
class Landscape {
public:
    Landscape(Random& random, double grain);
    double at(Spot spot) const;

private:
    double corner(int x, int y) const;
    std::uint64_t seed_;
    double grain_;
};

} // namespace thawslip::damage
