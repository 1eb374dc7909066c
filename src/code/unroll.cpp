#include "code/unroll.h"

#include "code/sample.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace thawslip::code {
namespace {

using enum Bend::Around;

// Of a code of 30 mm, these are bottles of 40, 50 and 70 mm and a full bag of 110 mm.
constexpr std::array radii = {0.95, 0.75, 1.3, 2.0};
constexpr std::array crests = {0.0, 0.15, -0.15, 0.3, -0.3};

double distance(Place a, Place b) {
    return std::hypot(b.x - a.x, b.y - a.y);
}

/// How far from the crest's line the paper's place `at`, from the code's middle, is seen.
double seen_at(double at, const Bend& bend) {
    constexpr double edge = 1.5; // radians: what is further around is not seen
    return bend.radius * std::sin(std::clamp((at - bend.crest) / bend.radius, -edge, edge));
}

/// How much narrower than it is the bend makes the way from finder pattern to finder pattern.
double narrowing(const Bend& bend) {
    return seen_at(0.5, bend) - seen_at(-0.5, bend);
}

/// By how much the bend's narrowing differs from what is seen; perspective makes some of that.
double strangeness(const Bend& bend, const Finders& finders) {
    const double right = distance(finders.corner, finders.right);
    const double below = distance(finders.corner, finders.below);
    const double seen = bend.around == OneSide ? right / below : below / right;
    return std::abs(std::log(seen / narrowing(bend)));
}

} // namespace

std::vector<Bend> likely_bends(const Finders& finders) {
    std::vector<Bend> bends;
    for (const auto around : {OneSide, OtherSide}) {
        for (const double radius : radii) {
            for (const double crest : crests) {
                bends.push_back({around, radius, crest});
            }
        }
    }
    constexpr double too_strange = 0.35;
    std::erase_if(bends,
                  [&](const Bend& bend) { return strangeness(bend, finders) > too_strange; });
    std::ranges::stable_sort(bends, {},
                             [&](const Bend& bend) { return strangeness(bend, finders); });
    return bends;
}

GreyPicture unrolled(const GreyPicture& picture, const Finders& finders, const Bend& bend) {
    const bool first = bend.around == OneSide;
    const Place across = first ? finders.right : finders.below;
    const Place along = first ? finders.below : finders.right;
    constexpr int pixels = 600;
    constexpr double room = 1.9; // ways from finder to finder: the code and what lies about it
    GreyPicture flat{pixels, pixels, {}};
    flat.pixels.reserve(static_cast<std::size_t>(pixels) * pixels);
    const double begin = seen_at(-0.5, bend);
    const double whole = narrowing(bend);
    for (int y = 0; y < pixels; ++y) {
        const double down = ((y + 0.5) / pixels - 0.5) * room + 0.5;
        for (int x = 0; x < pixels; ++x) {
            const double at = ((x + 0.5) / pixels - 0.5) * room;
            const double over = (seen_at(at, bend) - begin) / whole;
            const auto place = [&](double Place::*axis) {
                return finders.corner.*axis + over * (across.*axis - finders.corner.*axis) +
                       down * (along.*axis - finders.corner.*axis);
            };
            flat.pixels.push_back(sample(picture, place(&Place::x) - 0.5, place(&Place::y) - 0.5));
        }
    }
    return flat;
}

} // namespace thawslip::code
