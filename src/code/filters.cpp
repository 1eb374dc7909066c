#include "code/filters.h"

#include "code/row_major.h"

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

    float* row(int y) { return values.data() + row_major(0, y, width); }
    const float* row(int y) const { return values.data() + row_major(0, y, width); }
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
        const auto is_beaten_by = [&](int x) { return !beats(from[best.back()], from[x]); };
        for (int x = 0; x < count + reach; ++x) {
            while (x < count && !best.empty() && is_beaten_by(x)) {
                best.pop_back();
            }
            if (x < count) {
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

namespace {

constexpr int square = 8;

/// What is known of a square of pixels, or of several.
struct LightSum {
    int sum = 0;
    int count = 0;
    std::uint8_t darkest = 255;
    std::uint8_t lightest = 0;

    void add(const LightSum& more) {
        sum += more.sum;
        count += more.count;
        darkest = std::min(darkest, more.darkest);
        lightest = std::max(lightest, more.lightest);
    }
};

struct Squares {
    int width = 0;
    int height = 0;
    std::vector<LightSum> light;

    LightSum& at(int x, int y) { return light[row_major(x, y, width)]; }
    const LightSum& at(int x, int y) const { return light[row_major(x, y, width)]; }
};

/// Cut off at the right and below.
Squares squares_of(const GreyPicture& picture) {
    Squares squares{picture.width / square, picture.height / square, {}};
    squares.light.resize(row_major(0, squares.height, squares.width));
    for (int y = 0; y < squares.height * square; ++y) {
        const auto* row = &picture.pixels[picture.index(0, y)];
        for (int x = 0; x < squares.width * square; ++x) {
            squares.at(x / square, y / square).add({row[x], 1, row[x], row[x]});
        }
    }
    return squares;
}

/// Below which grey a pixel of this square is dark, by those two on each side of it; at the edge
/// there are fewer.
std::uint8_t limit_at(const Squares& squares, int x, int y) {
    constexpr int reach = 2;
    constexpr int noise = 24; // levels: common practice, no source
    LightSum around;
    for (int v = std::max(y - reach, 0); v <= std::min(y + reach, squares.height - 1); ++v) {
        for (int u = std::max(x - reach, 0); u <= std::min(x + reach, squares.width - 1); ++u) {
            around.add(squares.at(u, v));
        }
    }
    const bool is_even = around.lightest - around.darkest <= noise;
    return is_even ? std::uint8_t{0} : static_cast<std::uint8_t>(around.sum / around.count);
}

} // namespace

GreyPicture black_and_white(const GreyPicture& picture) {
    GreyPicture parted{picture.width, picture.height,
                       std::vector<std::uint8_t>(picture.pixels.size(), 255)};
    if (picture.width < square || picture.height < square) {
        return parted;
    }
    const auto squares = squares_of(picture);
    GreyPicture limits{squares.width, squares.height, {}};
    for (int i = 0; i < squares.width * squares.height; ++i) {
        limits.pixels.push_back(limit_at(squares, i % squares.width, i / squares.width));
    }
    for (int y = 0; y < picture.height; ++y) {
        const auto* limit =
            &limits.pixels[limits.index(0, std::min(y / square, limits.height - 1))];
        const auto* from = &picture.pixels[picture.index(0, y)];
        auto* into = &parted.pixels[picture.index(0, y)];
        for (int x = 0; x < picture.width; ++x) {
            into[x] = from[x] < limit[std::min(x / square, limits.width - 1)] ? 0 : 255;
        }
    }
    return parted;
}

} // namespace thawslip::code
