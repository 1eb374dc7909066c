// What is done to a photograph before a reader looks at it again.

#include "code/filters.h"
#include "code/finders.h"
#include "code/sample.h"
#include "code/unroll.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <functional>

using namespace thawslip::code;

namespace {

GreyPicture painted(int width, int height, const std::function<double(int x, int y)>& light) {
    GreyPicture picture{width, height, {}};
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            picture.pixels.push_back(static_cast<std::uint8_t>(std::lround(light(x, y))));
        }
    }
    return picture;
}

double at(const GreyPicture& picture, int x, int y) {
    return picture.pixels[picture.index(x, y)];
}

/// Whether a place, in modules from the middle of a finder pattern, is dark.
bool in_pattern(double x, double y) {
    const double away = std::max(std::abs(x), std::abs(y));
    return away < 1.5 || (away > 2.5 && away < 3.5);
}

/// Three finder patterns, `apart` modules from middle to middle, and nothing else; `at` gives for a
/// place of the picture the place in modules.
template <class Where>
GreyPicture finder_patterns(int side, double apart, const Where& where) {
    return painted(side, side, [&](int x, int y) {
        const Place place = where(x + 0.5, y + 0.5);
        const bool dark = in_pattern(place.x, place.y) || in_pattern(place.x - apart, place.y) ||
                          in_pattern(place.x, place.y - apart);
        return dark ? 20.0 : 220.0;
    });
}

double away(const Place& a, double x, double y) {
    return std::hypot(a.x - x, a.y - y);
}

} // namespace

TEST_CASE("evened light leaves ink dark and paper light on both sides of a shadow's edge") {
    const auto shaded = painted(120, 80, [](int x, int y) {
        const double light = x < 60 ? 1.0 : 0.25;
        return light * ((x / 5 + y / 5) % 2 == 0 ? 30.0 : 210.0);
    });
    const auto even = evened(shaded, 12);
    for (int y = 12; y < 70; y += 5) {
        for (int x = 12; x < 110; x += 5) {
            CAPTURE(x);
            CAPTURE(y);
            const bool ink = (x / 5 + y / 5) % 2 == 0;
            CHECK((at(even, x, y) < 100.0) == ink);
            CHECK((at(even, x, y) > 160.0) == !ink);
        }
    }
}

TEST_CASE("a sharpened picture is nearer to what was blurred than the blur is") {
    const auto bars = [](int x, int) { return x / 4 % 2 == 0 ? 60.0 : 200.0; };
    const auto blur = [&](int x, int y) { // three boxes of three are these seven weights
        constexpr double weights[] = {1, 3, 6, 7, 6, 3, 1};
        double sum = 0;
        for (int i = -3; i <= 3; ++i) {
            sum += weights[i + 3] / 27.0 * bars(x + i + 400, y);
        }
        return sum;
    };
    const auto seen = painted(80, 30, blur);
    const auto sharp = sharpened(seen, 3);
    double before = 0;
    double after = 0;
    for (int x = 10; x < 70; ++x) {
        before += std::abs(at(seen, x, 15) - bars(x + 400, 15));
        after += std::abs(at(sharp, x, 15) - bars(x + 400, 15));
    }
    CHECK(after < 0.75 * before);
}

TEST_CASE("the finder patterns of a code are found, turned and seen narrow") {
    for (const double turn : {0.0, 0.4, 1.2, 2.9}) {
        for (const double narrow : {1.0, 0.6}) {
            CAPTURE(turn);
            CAPTURE(narrow);
            const double cosine = std::cos(turn);
            const double sine = std::sin(turn);
            constexpr double module = 5.0;
            const auto where = [&](double x, double y) {
                const Place p{(x - 200) / module, (y - 200) / module};
                return Place{(p.x * cosine + p.y * sine) / narrow + 12,
                             p.y * cosine - p.x * sine + 12};
            };
            const auto found = find_finders(finder_patterns(400, 24.0, where));
            REQUIRE_FALSE(found.empty());
            const double x = -12 * narrow * module;
            const double y = -12 * module;
            CHECK(away(found[0].corner, 200 + x * cosine - y * sine, 200 + x * sine + y * cosine) <
                  module);
        }
    }
    CHECK(find_finders(painted(100, 100, [](int, int) { return 200.0; })).empty());
    CHECK(find_finders({}).empty());
}

TEST_CASE("what is bent around a cylinder is flat once it is unrolled by the same bend") {
    constexpr double apart = 40.0;
    constexpr double module = 6.0;
    for (const double crest : {0.0, 0.2}) {
        CAPTURE(crest);
        const Bend bend{Bend::Around::OneSide, 0.8, crest};
        // As it is seen: 0.8 and the crest are in ways from finder pattern to finder pattern.
        const auto where = [&](double x, double y) {
            const double seen = (x - 250) / (module * apart) + 0.8 * std::sin(-crest / 0.8);
            const double arc = 0.8 * std::asin(std::clamp(seen / 0.8, -1.0, 1.0)) + crest;
            return Place{(arc + 0.5) * apart, (y - 130) / module};
        };
        const auto bent = finder_patterns(500, apart, where);
        const auto found = find_finders(bent);
        REQUIRE_FALSE(found.empty());
        auto finders = found.front();
        if (std::abs(finders.right.y - finders.corner.y) > 50) {
            std::swap(finders.right, finders.below);
        }
        const auto flat = unrolled(bent, finders, bend);
        // Where it is flat, every module of the lower pattern and of the others is where it
        // belongs.
        const double way = flat.width / 1.9;
        const double begin = flat.width / 2.0 - way / 2;
        int wrong = 0;
        for (int y = -6; y <= 46; ++y) {
            for (int x = -6; x <= 46; ++x) {
                const bool dark =
                    in_pattern(x, y) || in_pattern(x - apart, y) || in_pattern(x, y - apart);
                const double seen = sample(flat, begin + x * way / apart, begin + y * way / apart);
                wrong += (seen < 120.0) == dark ? 0 : 1;
            }
        }
        CHECK(wrong <= 12); // of 2809: at the edges of modules
    }
}

TEST_CASE("a code that looks narrow is thought to be bent along that side first") {
    const Finders narrow{{0, 0}, {70, 0}, {0, 100}};
    const auto bends = likely_bends(narrow);
    REQUIRE_FALSE(bends.empty());
    CHECK(bends.front().around == Bend::Around::OneSide);
    const Finders low{{0, 0}, {100, 0}, {0, 70}};
    CHECK(likely_bends(low).front().around == Bend::Around::OtherSide);
}
