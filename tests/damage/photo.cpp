#include "damage/photo.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <functional>
#include <numbers>

namespace thawslip::damage {
namespace {

constexpr double table = 0.35; ///< reflectance of what the label lies on

/// The eye behind the camera: what `Photography` means, worked out once for a picture.
class View {
public:
    View(const Photography& how, double half, double light_angle)
        : how_{how}, half_{half}, turn_{std::cos(how.turn), std::sin(how.turn)},
          light_{std::cos(light_angle), std::sin(light_angle)} {}

    /// Where on the paper, in mm from its middle, a ray ends that would pass the point `seen`, in
    /// mm from the picture's middle, of a plane at the nominal distance.
    Spot on_paper(Spot seen) const {
        const Spot turned{seen.x * turn_.x - seen.y * turn_.y, seen.x * turn_.y + seen.y * turn_.x};
        const double depth =
            1.0 + (how_.tilt_x * turned.x + how_.tilt_y * turned.y) / (2.0 * half_);
        const Spot flat{turned.x * depth, turned.y * depth};
        // A bag bulges like the back of a cylinder: the further from the crest, the more paper
        // there is under a millimetre of picture.
        const double off_crest = flat.x / half_;
        return unrolled({flat.x * (1.0 + how_.curl / half_ * off_crest * off_crest), flat.y});
    }

    /// The share of the full light that falls on `seen`: an even slope across the picture.
    double light(Spot seen) const {
        const double along = (seen.x * light_.x + seen.y * light_.y) / (2.0 * half_);
        return 1.0 - how_.shade * std::clamp(0.5 + along, 0.0, 1.0);
    }

private:
    /// Where on the paper a point is that is seen on the cylinder: as far from its crest as the
    /// arc is long. What is beyond its edge is no paper.
    Spot unrolled(Spot seen) const {
        if (how_.cylinder <= 0.0) {
            return seen;
        }
        const double cosine = std::cos(how_.axis);
        const double sine = std::sin(how_.axis);
        const double crest = how_.crest / how_.cylinder;
        const double off_crest =
            (seen.x * cosine + seen.y * sine) / how_.cylinder + std::sin(-crest);
        if (std::abs(off_crest) >= 1.0) {
            return {1e6, 1e6};
        }
        const double more =
            how_.cylinder * (std::asin(off_crest) + crest - off_crest - std::sin(crest));
        return {seen.x + more * cosine, seen.y + more * sine};
    }

    Photography how_;
    double half_;
    Spot turn_;
    Spot light_;
};

/// Near enough to a normal deviate: the sum of three even ones, scaled to a deviation of 1.
double noise(Random& random) {
    return 2.0 * (random.unit() + random.unit() + random.unit() - 1.5);
}

using Block = std::array<std::array<double, 8>, 8>;

/// The cosine transform of an 8 × 8 block along its rows, or back; orthonormal (DCT-II).
Block transformed(const Block& block, bool forward) {
    static const Block waves = [] {
        Block cosines{};
        for (std::size_t k = 0; k < 8; ++k) {
            for (std::size_t i = 0; i < 8; ++i) {
                const double angle = std::numbers::pi / 8.0 * (static_cast<double>(i) + 0.5) *
                                     static_cast<double>(k);
                cosines[k][i] = std::cos(angle) * std::sqrt((k == 0 ? 1.0 : 2.0) / 8.0);
            }
        }
        return cosines;
    }();
    Block result{};
    for (std::size_t row = 0; row < 8; ++row) {
        for (std::size_t to = 0; to < 8; ++to) {
            for (std::size_t from = 0; from < 8; ++from) {
                result[row][to] += block[row][from] * (forward ? waves[to][from] : waves[from][to]);
            }
        }
    }
    return result;
}

Block transposed(const Block& block) {
    Block result{};
    for (std::size_t y = 0; y < 8; ++y) {
        for (std::size_t x = 0; x < 8; ++x) {
            result[x][y] = block[y][x];
        }
    }
    return result;
}

/// Keeps of each wave whole steps only, coarser for finer waves, as JPEG does.
Block coarsened(const Block& block, double step) {
    Block waves = transformed(transposed(transformed(block, true)), true);
    for (std::size_t y = 0; y < 8; ++y) {
        for (std::size_t x = 0; x < 8; ++x) {
            const double wide = step * (1.0 + static_cast<double>(x + y) / 2.0);
            waves[y][x] = std::round(waves[y][x] / wide) * wide;
        }
    }
    return transformed(transposed(transformed(waves, false)), false);
}

void compress(Raster& photo, double step) {
    for (int top = 0; top + 8 <= photo.height(); top += 8) {
        for (int left = 0; left + 8 <= photo.width(); left += 8) {
            Block block{};
            for (int i = 0; i < 64; ++i) {
                block[static_cast<std::size_t>(i / 8)][static_cast<std::size_t>(i % 8)] =
                    photo.at(left + i % 8, top + i / 8);
            }
            block = coarsened(block, step);
            for (int i = 0; i < 64; ++i) {
                photo.at(left + i % 8, top + i / 8) =
                    block[static_cast<std::size_t>(i / 8)][static_cast<std::size_t>(i % 8)];
            }
        }
    }
}

Picture developed(const Raster& photo) {
    Picture picture{photo.width(), photo.height(), {}};
    picture.pixels.reserve(photo.values().size());
    for (const double value : photo.values()) {
        picture.pixels.push_back(
            static_cast<std::uint8_t>(std::lround(255.0 * std::clamp(value, 0.0, 1.0))));
    }
    return picture;
}

/// How much light passes the shadows of fingers and folds, some 12 mm wide. Without any, no lot is
/// drawn.
std::function<double(Spot)> shadows(double depth, Random& random) {
    if (depth <= 0.0) {
        return [](Spot) { return 1.0; };
    }
    constexpr double grain = 12.0;
    constexpr double edge = 0.06; // of the landscape's height: a millimetre or two
    return [depth, hills = Landscape{random, grain}](Spot seen) {
        return 1.0 - depth * std::clamp((hills.at(seen) - 0.5) / edge, 0.0, 1.0);
    };
}

} // namespace

Picture photographed(const Raster& paper, double paper_scale, const Photography& how,
                     Random& random) {
    const double half = paper.width() / paper_scale / 2.0;
    const int side = static_cast<int>(std::ceil(2.5 * half * how.pixels_per_mm)) / 8 * 8;
    const View view{how, half, random.between(0.0, 2.0 * std::numbers::pi)};
    const auto seen_at = [&](double x, double y) {
        return Spot{(x - side / 2.0) / how.pixels_per_mm, (y - side / 2.0) / how.pixels_per_mm};
    };
    const auto ray = [&](double x, double y) {
        const Spot spot = view.on_paper(seen_at(x, y));
        return paper.sample({(spot.x + half) * paper_scale, (spot.y + half) * paper_scale}, table);
    };
    const auto shadow = shadows(how.blotches, random);
    Raster photo{side, side, table};
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            // A pixel gathers light from its whole square: two rays stand for it.
            const double gathered = (ray(x + 0.25, y + 0.25) + ray(x + 0.75, y + 0.75)) / 2.0;
            const Spot seen = seen_at(x + 0.5, y + 0.5);
            photo.at(x, y) = gathered * view.light(seen) * shadow(seen);
        }
    }
    photo = blurred(photo, how.blur);
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            photo.at(x, y) += how.noise * noise(random);
        }
    }
    if (how.coarseness > 0.0) {
        compress(photo, how.coarseness / 255.0);
    }
    return developed(photo);
}

Photography some_photography(Camera camera, Random& random) {
    Photography how;
    const double fineness = random.unit();
    how.pixels_per_mm = camera == Camera::Good ? 8.0 + 8.0 * fineness : 5.0 + 3.0 * fineness;
    how.turn = random.between(-std::numbers::pi, std::numbers::pi);
    how.tilt_x = random.between(-0.15, 0.15);
    how.tilt_y = random.between(-0.15, 0.15);
    how.curl = random.between(0.0, 1.5);
    how.blur = random.between(0.4, 1.3);
    how.shade = random.between(0.0, 0.5);
    how.noise = random.between(0.005, 0.03);
    how.coarseness = random.between(2.0, 12.0);
    return how;
}

} // namespace thawslip::damage
