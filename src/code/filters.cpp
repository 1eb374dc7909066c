#include "code/filters.h"

#include <algorithm>
#include <cmath>
#include <deque>

namespace thawslip::code {
namespace {

using Row = std::vector<float>;

/// A picture in floating point, as high as wide things get: filters go along its rows, then it is
/// turned over for its columns.
struct Plane {
    int width = 0;
    int height = 0;
    std::vector<float> values;

    float* row(int y) {
        return values.data() + static_cast<std::size_t>(y) * static_cast<std::size_t>(width);
    }
    const float* row(int y) const {
        return values.data() + static_cast<std::size_t>(y) * static_cast<std::size_t>(width);
    }
};

Plane plane_of(const GreyPicture& picture) {
    return {picture.width, picture.height, {picture.pixels.begin(), picture.pixels.end()}};
}

GreyPicture picture_of(const Plane& plane) {
    GreyPicture picture{plane.width, plane.height, {}};
    picture.pixels.reserve(plane.values.size());
    for (const float value : plane.values) {
        picture.pixels.push_back(
            static_cast<std::uint8_t>(std::lround(std::clamp(value, 0.0F, 255.0F))));
    }
    return picture;
}

Plane turned_over(const Plane& plane) {
    Plane result{plane.height, plane.width, std::vector<float>(plane.values.size())};
    for (int y = 0; y < plane.height; ++y) {
        const float* from = plane.row(y);
        for (int x = 0; x < plane.width; ++x) {
            result.row(x)[y] = from[x];
        }
    }
    return result;
}

/// Applies `along`, which filters a row into another, to rows and columns.
template <class Filter>
Plane both_ways(Plane plane, const Filter& along) {
    for (int way = 0; way < 2; ++way) {
        Plane filtered{plane.width, plane.height, std::vector<float>(plane.values.size())};
        for (int y = 0; y < plane.height; ++y) {
            along(plane.row(y), filtered.row(y), plane.width);
        }
        plane = turned_over(filtered);
    }
    return plane;
}

/// The most extreme value within `reach` of each place, by a queue of candidates.
template <class Beats>
Plane extremes(const Plane& plane, int reach, const Beats& beats) {
    return both_ways(plane, [&](const float* from, float* to, int count) {
        std::deque<int> best;
        for (int x = 0; x < count + reach; ++x) {
            if (x < count) {
                while (!best.empty() && !beats(from[best.back()], from[x])) {
                    best.pop_back();
                }
                best.push_back(x);
            }
            if (best.front() < x - 2 * reach) {
                best.pop_front();
            }
            if (x >= reach) {
                to[x - reach] = from[best.front()];
            }
        }
    });
}

/// The mean over `box` neighbours; at the edge over those that there are.
Plane averaged(const Plane& plane, int box) {
    const int reach = box / 2;
    return both_ways(plane, [reach](const float* from, float* to, int count) {
        float sum = 0.0F;
        int width = 0;
        for (int x = -reach; x < count; ++x) {
            if (x + reach < count) {
                sum += from[x + reach];
                ++width;
            }
            if (x - reach - 1 >= 0) {
                sum -= from[x - reach - 1];
                --width;
            }
            if (x >= 0) {
                to[x] = sum / static_cast<float>(width);
            }
        }
    });
}

Plane blurred(const Plane& plane, int box) {
    return averaged(averaged(averaged(plane, box), box), box);
}

} // namespace

GreyPicture evened(const GreyPicture& picture, int reach) {
    const auto plane = averaged(plane_of(picture), 3); // so that noise is not taken for light
    const auto lightest = extremes(plane, reach, [](float a, float b) { return a > b; });
    auto paper = extremes(lightest, reach, [](float a, float b) { return a < b; });
    auto even = plane_of(picture);
    constexpr float white = 220.0F;
    constexpr float darkest = 8.0F; // below that there is nothing but noise
    for (std::size_t i = 0; i < even.values.size(); ++i) {
        even.values[i] *= white / std::max(paper.values[i], darkest);
    }
    return picture_of(even);
}

GreyPicture sharpened(const GreyPicture& picture, int box) {
    constexpr int steps = 5;
    const auto seen = plane_of(picture);
    auto sharp = seen;
    for (int step = 0; step < steps; ++step) {
        const auto again = blurred(sharp, box);
        for (std::size_t i = 0; i < sharp.values.size(); ++i) {
            sharp.values[i] =
                std::clamp(sharp.values[i] + seen.values[i] - again.values[i], 0.0F, 255.0F);
        }
    }
    return picture_of(sharp);
}

} // namespace thawslip::code
