#include "damage/winter.h"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace thawslip::damage {
namespace {

constexpr double ice = 0.8; ///< reflectance of frost in room light
constexpr double bare_paper = 0.85;

Spot somewhere_in_the_code(const Label& label, Random& random) {
    return {label.code.x + random.unit() * label.code_side,
            label.code.y + random.unit() * label.code_side};
}

Spot direction(Random& random) {
    const double angle = random.between(0.0, 2.0 * std::numbers::pi);
    return {std::cos(angle), std::sin(angle)};
}

/// Calls `work(x, y, spot)` for each pixel of the paper whose place lies within `reach` mm of
/// `middle`, measured along the axes.
template <class Work>
void for_each_near(const Label& label, Spot middle, double reach, Work work) {
    const auto pixel = [](double mm, int end) {
        return std::clamp(static_cast<int>(std::floor(mm * paper_scale)), 0, end);
    };
    const int right = pixel(middle.x + reach, label.paper.width() - 1);
    const int bottom = pixel(middle.y + reach, label.paper.height() - 1);
    for (int y = pixel(middle.y - reach, bottom); y <= bottom; ++y) {
        for (int x = pixel(middle.x - reach, right); x <= right; ++x) {
            work(x, y, Spot{(x + 0.5) / paper_scale, (y + 0.5) / paper_scale});
        }
    }
}

void mix(double& value, double other, double share) {
    value += (other - value) * share;
}

/// A spot seen from a stroke: how far along its direction from the middle, how far off it.
Spot along(Spot spot, Spot middle, Spot way) {
    const double dx = spot.x - middle.x;
    const double dy = spot.y - middle.y;
    return {dx * way.x + dy * way.y, dy * way.x - dx * way.y};
}

/// One ice grain: rounder or longer, with a ragged rim. Returns the area that it covers, mm².
double add_grain(Label& label, const Landscape& rim, Random& random) {
    const double radius = 0.1 * std::pow(6.0, random.unit()); // 0.2 to 1.2 mm across
    const Spot middle{random.unit() * label.paper.width() / paper_scale,
                      random.unit() * label.paper.height() / paper_scale};
    const double opacity = random.between(0.6, 1.0);
    for_each_near(label, middle, radius * 1.3, [&](int x, int y, Spot spot) {
        const double distance = std::hypot(spot.x - middle.x, spot.y - middle.y);
        if (distance < radius * (0.7 + 0.6 * rim.at(spot))) {
            mix(label.paper.at(x, y), ice, opacity);
        }
    });
    return std::numbers::pi * radius * radius;
}

/// The mean of what lies up to `reach` mm before a spot: what a thumb has dragged there.
double dragged(const Raster& paper, Spot spot, Spot way, double reach) {
    constexpr int steps = 12;
    double sum = 0.0;
    for (int i = 0; i < steps; ++i) {
        const double back = reach * i / steps;
        const Spot source{(spot.x - way.x * back) * paper_scale,
                          (spot.y - way.y * back) * paper_scale};
        sum += paper.sample(source, ice);
    }
    return sum / steps;
}

} // namespace

void frost(Label& label, double share, double haze, Random& random) {
    const double area = label.paper.width() * label.paper.height() / (paper_scale * paper_scale);
    const Landscape rim{random, 0.3};
    for (double covered = 0.0; covered < share * area;) {
        covered += add_grain(label, rim, random);
    }
    const Landscape rime{random, 8.0};
    for (int y = 0; y < label.paper.height(); ++y) {
        for (int x = 0; x < label.paper.width(); ++x) {
            const Spot spot{x / paper_scale, y / paper_scale};
            mix(label.paper.at(x, y), ice, haze * rime.at(spot));
        }
    }
}

void scuff(Label& label, double width, double wear, Random& random) {
    const double length = label.code_side * 2.0 / 3.0;
    const Spot middle = somewhere_in_the_code(label, random);
    const Spot way = direction(random);
    const Landscape flakes{random, 0.2};
    for_each_near(label, middle, length / 2.0, [&](int x, int y, Spot spot) {
        const Spot seen = along(spot, middle, way);
        const double edge = 1.0 - 2.0 * std::abs(seen.y) / width; // 1 in the middle, 0 at the rim
        if (std::abs(seen.x) < length / 2.0 && edge > 0.0) {
            const bool flaked_off = flakes.at(spot) < wear * edge;
            mix(label.paper.at(x, y), bare_paper, flaked_off ? 0.9 : wear / 2.0);
        }
    });
}

void scratch(Label& label, double width, double length, Random& random) {
    const Spot middle = somewhere_in_the_code(label, random);
    const Spot way = direction(random);
    const double bend = random.between(-0.01, 0.01);
    for_each_near(label, middle, length / 2.0, [&](int x, int y, Spot spot) {
        const Spot seen = along(spot, middle, way);
        const double off = std::abs(seen.y - bend * seen.x * seen.x);
        if (std::abs(seen.x) < length / 2.0 && off < width / 2.0) {
            mix(label.paper.at(x, y), bare_paper, 0.9);
        }
    });
}

void smear(Label& label, double share, Random& random) {
    // A stroke with round ends, three times as long as wide: 3w · w less the corners.
    const double area = share * label.code_side * label.code_side;
    const double width = std::sqrt(area / (2.0 + std::numbers::pi / 4.0));
    const double half_straight = width; // (3w - w) / 2
    const Spot middle = somewhere_in_the_code(label, random);
    const Spot way = direction(random);
    const Raster before = label.paper;
    const Landscape film{random, 1.0};
    for_each_near(label, middle, half_straight + width, [&](int x, int y, Spot spot) {
        const Spot seen = along(spot, middle, way);
        const double end = std::max(0.0, std::abs(seen.x) - half_straight);
        if (std::hypot(end, seen.y) < width / 2.0) {
            const double ink = dragged(before, spot, way, width) - 0.15 * film.at(spot);
            mix(label.paper.at(x, y), std::max(ink, 0.05), 0.85);
        }
    });
}

void wet_corner(Label& label, double reach, Random& random) {
    constexpr double run = 0.4; // mm
    const auto which = random.below(4);
    const Spot corner{label.code.x + (which % 2 == 0 ? 0.0 : label.code_side),
                      label.code.y + (which / 2 == 0 ? 0.0 : label.code_side)};
    const double radius = reach * label.code_side;
    const Raster run_ink = blurred(label.paper, run * paper_scale);
    const Landscape rim{random, 4.0};
    for_each_near(label, corner, 1.2 * radius, [&](int x, int y, Spot spot) {
        const double away = std::hypot(spot.x - corner.x, spot.y - corner.y);
        if (away < radius * (0.8 + 0.4 * rim.at(spot))) {
            mix(label.paper.at(x, y), (run_ink.at(x, y) + bare_paper) / 2.0, 0.9);
        }
    });
}

void crease(Label& label, Random& random) {
    const Spot middle = somewhere_in_the_code(label, random);
    const Spot way = direction(random);
    const Landscape flakes{random, 0.3};
    for_each_near(label, middle, label.code_side * 2.0, [&](int x, int y, Spot spot) {
        const double off = along(spot, middle, way).y;
        double& value = label.paper.at(x, y);
        if (std::abs(off) < 0.1 + 0.2 * flakes.at(spot)) {
            mix(value, bare_paper, 0.9);
        }
        value *= off > 0.0 ? 1.0 - 0.25 * std::exp(-off / 3.0) : 1.0;
    });
}

} // namespace thawslip::damage
