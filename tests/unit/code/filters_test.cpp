// What is done to a picture's light, by figures.

#include "code/filters.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <functional>
#include <vector>

namespace filters_test {

using namespace thawslip::code;

namespace {

GreyPicture painted(int width, int height, const std::function<int(int x, int y)>& light) {
    GreyPicture picture{width, height, {}};
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            picture.pixels.push_back(static_cast<std::uint8_t>(light(x, y)));
        }
    }
    return picture;
}

int at(const GreyPicture& picture, int x, int y) {
    return picture.pixels[picture.index(x, y)];
}

/// The mean of each place's neighbours in a box; at the ends of those that there are.
std::vector<double> averaged(const std::vector<double>& values, int box) {
    std::vector<double> means;
    const int count = static_cast<int>(values.size());
    for (int i = 0; i < count; ++i) {
        double sum = 0.0;
        int width = 0;
        for (int j = std::max(i - box / 2, 0); j <= std::min(i + box / 2, count - 1); ++j) {
            sum += values[static_cast<std::size_t>(j)];
            ++width;
        }
        means.push_back(sum / width);
    }
    return means;
}

} // namespace

TEST_CASE("evened paper is white, however dark, and ink keeps its share of the light") {
    for (const int paper : {250, 160, 40, 8}) {
        CAPTURE(paper);
        const auto even = evened(painted(60, 50, [paper](int, int) { return paper; }), 6);
        CHECK(std::ranges::all_of(even.pixels, [](int pixel) { return pixel == 220; }));
    }
    // In the dark there is only noise, which is not blown up.
    CHECK(at(evened(painted(60, 50, [](int, int) { return 4; }), 6), 30, 25) == 110);
    const auto line = painted(80, 60, [](int x, int) { return x >= 38 && x < 42 ? 30 : 150; });
    for (const int y : {0, 30, 59}) {
        CHECK(at(evened(line, 8), 40, y) == 44); // 30/150 of 220
        CHECK(at(evened(line, 8), 20, y) == 220);
        CHECK(at(evened(line, 8), 0, y) == 220);
        CHECK(at(evened(line, 8), 79, y) == 220);
    }
}

TEST_CASE("what is dark and narrow is ink, what is wide is shadow, along rows and columns") {
    constexpr int reach = 8;
    const auto middle_of_stripe = [](int width, bool upright) {
        const auto stripe = painted(100, 100, [width, upright](int x, int y) {
            return std::abs((upright ? x : y) - 50) <= width / 2 ? 60 : 180;
        });
        return at(evened(stripe, reach), 50, 50);
    };
    for (const bool upright : {true, false}) {
        CHECK(middle_of_stripe(3, upright) < 80);
        CHECK(middle_of_stripe(reach, upright) < 80);
        CHECK(middle_of_stripe(2 * reach - 3, upright) < 80);
        CHECK(middle_of_stripe(2 * reach + 5, upright) == 220);
        CHECK(middle_of_stripe(5 * reach, upright) == 220);
    }
}

TEST_CASE("a picture is sharpened as Van Cittert's iteration has it, along rows and columns") {
    // P. H. van Cittert, Zeitschrift für Physik 69 (1931), from memory: what a blur of the guess
    // lacks of what is seen is added to the guess; here five times, the blur three boxes.
    const auto seen = [](int i) { return i / 7 % 2 == 0 ? 90 + i % 7 : 160 - i % 5; };
    for (const int box : {3, 5, 9}) {
        CAPTURE(box);
        std::vector<double> row;
        for (int i = 0; i < 90; ++i) {
            row.push_back(seen(i));
        }
        const auto given = row;
        for (int step = 0; step < 5; ++step) {
            const auto again = averaged(averaged(averaged(row, box), box), box);
            for (std::size_t i = 0; i < row.size(); ++i) {
                row[i] = std::clamp(row[i] + given[i] - again[i], 0.0, 255.0);
            }
        }
        const auto along = sharpened(painted(90, 40, [&](int x, int) { return seen(x); }), box);
        const auto down = sharpened(painted(40, 90, [&](int, int y) { return seen(y); }), box);
        for (int i = 0; i < 90; ++i) {
            CAPTURE(i);
            const double wanted = row[static_cast<std::size_t>(i)];
            for (const int across : {0, 20, 39}) {
                CHECK(std::abs(at(along, i, across) - wanted) <= 0.6);
                CHECK(std::abs(at(down, across, i) - wanted) <= 0.6);
            }
        }
    }
}

TEST_CASE("a picture in two tones parts at the mean of what lies around, not below the noise") {
    // 40 × 40: the middle square of 8 × 8 sees all of it.
    const auto spotted = [](int dark, int light) {
        return black_and_white(
            painted(40, 40, [&](int x, int y) { return (x + y) % 2 == 0 ? dark : light; }));
    };
    const auto even = spotted(100, 124); // no more than a camera's noise
    CHECK(std::ranges::all_of(even.pixels, [](int pixel) { return pixel == 255; }));
    const auto parted = spotted(100, 125);
    for (int y = 0; y < 40; ++y) {
        for (int x = 0; x < 40; ++x) {
            CHECK(at(parted, x, y) == ((x + y) % 2 == 0 ? 0 : 255));
        }
    }
    // A grey that is just the mean is not dark, one below it is.
    const auto with_grey = [](int grey) {
        const auto picture = painted(40, 40, [grey](int x, int y) {
            return x == 20 && y == 20   ? grey
                   : x == 21 && y == 20 ? 200 - grey
                   : x % 2 == 0         ? 0
                                        : 200;
        });
        return at(black_and_white(picture), 20, 20);
    };
    CHECK(with_grey(100) == 255);
    CHECK(with_grey(99) == 0);
}

TEST_CASE("two squares away an edge still counts, three away it does not") {
    const auto edge_at = [](int left, int x) {
        const auto picture =
            painted(80, 24, [left](int column, int) { return column >= left ? 220 : 100; });
        return at(black_and_white(picture), x, 12);
    };
    CHECK(edge_at(40, 39) == 0);
    CHECK(edge_at(40, 24) == 0);   // the square from 24 on has that from 40 on as its second
    CHECK(edge_at(40, 23) == 255); // all around is as dark as it is
    CHECK(edge_at(40, 56) == 255); // paper
    const auto below = painted(24, 80, [](int, int y) { return y >= 40 ? 220 : 100; });
    CHECK(at(black_and_white(below), 12, 24) == 0);
    CHECK(at(black_and_white(below), 12, 23) == 255);
}

TEST_CASE("a picture's rest at the right and below goes with the squares beside it") {
    const auto picture = painted(22, 23, [](int x, int y) { return (x + y) % 2 == 0 ? 30 : 230; });
    const auto parted = black_and_white(picture);
    CHECK(parted.width == 22);
    CHECK(parted.height == 23);
    for (int y = 0; y < 23; ++y) {
        for (int x = 0; x < 22; ++x) {
            CHECK(at(parted, x, y) == ((x + y) % 2 == 0 ? 0 : 255));
        }
    }
    for (const auto& [width, height] : {std::pair{7, 40}, {40, 7}}) {
        const auto narrow = black_and_white(
            painted(width, height, [](int x, int y) { return (x + y) % 2 == 0 ? 30 : 230; }));
        CHECK(narrow.pixels.size() == 280);
        CHECK(std::ranges::all_of(narrow.pixels, [](int pixel) { return pixel == 255; }));
    }
    const auto least = black_and_white(painted(8, 8, [](int x, int) { return x < 4 ? 30 : 230; }));
    CHECK(std::ranges::count(least.pixels, 0) == 32);
}

} // namespace filters_test
