#include "code/recover/anchor.h"

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <doctest/doctest.h>
#include <set>

namespace anchor_test {

using namespace thawslip::code;

namespace {

constexpr int module = 8; // pixels

/// A finder pattern with its rim, black 20 and white 220; some modules are turned over. Its middle
/// is that of the picture.
GreyPicture pattern(const std::set<std::pair<int, int>>& turned_over = {}) {
    constexpr int reach = 7;
    constexpr int side = (2 * reach + 1) * module;
    GreyPicture picture{side, side, {}};
    for (int i = 0; i < side * side; ++i) {
        const int x = i % side / module - reach;
        const int y = i / side / module - reach;
        const int ring = std::max(std::abs(x), std::abs(y));
        const bool dark = (ring < 2 || ring == 3) != turned_over.contains({x, y});
        picture.pixels.push_back(dark ? 20 : 220);
    }
    return picture;
}

/// The same out of focus: each pixel is the mean of a module's size about it.
GreyPicture blurred(const GreyPicture& sharp) {
    auto picture = sharp;
    for (int y = module; y < sharp.height - module; ++y) {
        for (int x = module; x < sharp.width - module; ++x) {
            double sum = 0.0;
            for (int v = -module / 2; v <= module / 2; ++v) {
                for (int u = -module / 2; u <= module / 2; ++u) {
                    const double share = (std::abs(u) == module / 2 ? 0.5 : 1.0) *
                                         (std::abs(v) == module / 2 ? 0.5 : 1.0);
                    sum += share * sharp.pixels[sharp.index(x + u, y + v)];
                }
            }
            picture.pixels[picture.index(x, y)] =
                static_cast<std::uint8_t>(std::lround(sum / (module * module)));
        }
    }
    return picture;
}

Local there() {
    constexpr double middle = 7.5 * module;
    return {{middle, middle}, {module, 0.0}, {0.0, module}};
}

} // namespace

TEST_CASE("a picture is as like a finder pattern as it shows black for black and white for white") {
    CHECK(likeness(pattern(), there()) == doctest::Approx(1.0));
    auto inverted = pattern();
    for (auto& pixel : inverted.pixels) {
        pixel = static_cast<std::uint8_t>(240 - pixel);
    }
    CHECK(likeness(inverted, there()) == doctest::Approx(-1.0));
    CHECK(likeness({120, 120, std::vector<std::uint8_t>(14400, 90)}, there()) ==
          doctest::Approx(0.0));
    // Every module counts, a black one for a 33rd of the black ones, a white one for a 48th.
    for (int y = -4; y <= 4; ++y) {
        for (int x = -4; x <= 4; ++x) {
            const int ring = std::max(std::abs(x), std::abs(y));
            CAPTURE(x);
            CAPTURE(y);
            CHECK(likeness(pattern({{x, y}}), there()) ==
                  doctest::Approx(1.0 - 1.0 / (ring == 2 || ring == 4 ? 48.0 : 33.0)));
        }
    }
    CHECK(likeness(pattern({{5, 0}, {0, -5}}), there()) == doctest::Approx(1.0));
}

TEST_CASE("a finder pattern that was found roughly is settled where it is") {
    const auto picture = blurred(pattern());
    const Local exact = there();
    Local rough = exact;
    const auto off_by = [&](const Place& by, double size, double turn) {
        rough.middle = {exact.middle.x + by.x * module, exact.middle.y + by.y * module};
        rough.across = {size * module * std::cos(turn), size * module * std::sin(turn)};
        rough.down = {-rough.across.y, rough.across.x};
    };
    for (const auto& by : {Place{0.0, 0.0}, {0.7, -0.4}, {-0.6, 0.6}}) {
        for (const double size : {0.9, 1.0, 1.12}) {
            for (const double turn : {0.0, 0.1, -0.1}) {
                CAPTURE(by.x);
                CAPTURE(size);
                CAPTURE(turn);
                off_by(by, size, turn);
                const auto found = settled(picture, rough);
                CHECK(std::hypot(found.middle.x - exact.middle.x, found.middle.y - exact.middle.y) <
                      0.1 * module);
                CHECK(std::hypot(found.across.x - module, found.across.y) < 0.05 * module);
                CHECK(std::hypot(found.down.x, found.down.y - module) < 0.05 * module);
                CHECK(likeness(picture, found) > 0.93 * likeness(picture, exact));
            }
        }
    }
}

} // namespace anchor_test
