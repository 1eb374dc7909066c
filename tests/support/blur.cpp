#include "support/blur.h"

#include <algorithm>
#include <cmath>

namespace thawslip::test_support {
namespace {

std::vector<double> weights(double sigma) {
    const int reach = static_cast<int>(std::ceil(3 * sigma));
    std::vector<double> all;
    double sum = 0;
    for (int i = -reach; i <= reach; ++i) {
        all.push_back(std::exp(-0.5 * i * i / (sigma * sigma)));
        sum += all.back();
    }
    for (auto& weight : all) {
        weight /= sum;
    }
    return all;
}

/// Blurs along the rows and turns the picture over, so that twice is both ways and upright again.
std::vector<double> along_rows(const std::vector<double>& from, int width, int height,
                               const std::vector<double>& weights) {
    std::vector<double> to(from.size());
    const int reach = static_cast<int>(weights.size() / 2);
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            double sum = 0;
            for (int i = -reach; i <= reach; ++i) {
                const int at = std::clamp(x + i, 0, width - 1);
                sum += weights[static_cast<std::size_t>(i + reach)] *
                       from[static_cast<std::size_t>(y * width + at)];
            }
            to[static_cast<std::size_t>(x * height + y)] = sum;
        }
    }
    return to;
}

} // namespace

Raster blurred(const Raster& picture, double sigma) {
    const auto spread = weights(sigma);
    std::vector<double> light{picture.pixels.begin(), picture.pixels.end()};
    light = along_rows(light, picture.width, picture.height, spread);
    light = along_rows(light, picture.height, picture.width, spread);
    Raster result{picture.width, picture.height, {}};
    for (const double value : light) {
        result.pixels.push_back(static_cast<std::uint8_t>(std::lround(value)));
    }
    return result;
}

Raster cropped(const Raster& picture, int left, int top, int width, int height) {
    left = std::clamp(left, 0, picture.width);
    top = std::clamp(top, 0, picture.height);
    Raster part{std::min(width, picture.width - left), std::min(height, picture.height - top), {}};
    for (int y = top; y < top + part.height; ++y) {
        for (int x = left; x < left + part.width; ++x) {
            part.pixels.push_back(picture.at(x, y));
        }
    }
    return part;
}

std::string to_pgm(const Raster& picture) {
    return "P5\n" + std::to_string(picture.width) + " " + std::to_string(picture.height) +
           "\n255\n" + std::string{picture.pixels.begin(), picture.pixels.end()};
}

} // namespace thawslip::test_support
