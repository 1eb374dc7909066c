// What counts as a finder pattern, and which three of them are those of a code.

#include "code/finders.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <doctest/doctest.h>
#include <numeric>
#include <vector>

namespace finders_test {

using namespace thawslip::code;

namespace {

using Widths = std::array<int, 5>; ///< of dark, light, dark, light and dark, in pixels

GreyPicture paper(int width, int height) {
    return {width, height,
            std::vector<std::uint8_t>(static_cast<std::size_t>(width * height), 220)};
}

/// In which run of these a place is; 5 beyond them.
int run_at(const Widths& widths, int place) {
    for (int run = 0; run < 5; ++run) {
        place -= widths[static_cast<std::size_t>(run)];
        if (place < 0) {
            return run;
        }
    }
    return 5;
}

/// Squares in squares whose sides have these widths from left to right and from the top down.
void draw(GreyPicture& picture, int left, int top, const Widths& across, const Widths& down) {
    const int width = std::accumulate(across.begin(), across.end(), 0);
    const int height = std::accumulate(down.begin(), down.end(), 0);
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const int column = run_at(across, x);
            const int row = run_at(down, y);
            const int ring = std::min({column, row, 4 - column, 4 - row});
            picture.pixels[picture.index(left + x, top + y)] = ring == 1 ? 220 : 20;
        }
    }
}

Widths widths(int module) {
    return {module, module, 3 * module, module, module};
}

/// A pattern of whole modules whose middle is there.
void draw_about(GreyPicture& picture, int x, int y, int module) {
    draw(picture, x - 7 * module / 2, y - 7 * module / 2, widths(module), widths(module));
}

/// The patterns found in a picture of one with these widths.
std::vector<FinderPattern> found_in(const Widths& across, const Widths& down) {
    auto picture = paper(200, 200);
    draw(picture, 30, 40, across, down);
    return find_finder_patterns(picture);
}

bool is_found(const Widths& across, const Widths& down) {
    return !found_in(across, down).empty();
}

double away(const Place& a, double x, double y) {
    return std::hypot(a.x - x, a.y - y);
}

} // namespace

TEST_CASE("a finder pattern is found in its middle, with its module, by all rows of its core") {
    for (const int module : {1, 2, 3, 6}) {
        CAPTURE(module);
        const auto found = found_in(widths(module), widths(module));
        REQUIRE(found.size() == 1);
        CHECK(found[0].middle.x == doctest::Approx(30 + 3.5 * module));
        CHECK(found[0].middle.y == doctest::Approx(40 + 3.5 * module));
        CHECK(found[0].module == doctest::Approx(module));
        CHECK(found[0].seen == 3 * module);
    }
    // Seen narrow, its module is the mean of both ways.
    const auto narrow = found_in(widths(4), widths(9));
    REQUIRE(narrow.size() == 1);
    CHECK(narrow[0].middle.x == doctest::Approx(30 + 14));
    CHECK(narrow[0].middle.y == doctest::Approx(40 + 31.5));
    CHECK(narrow[0].module == doctest::Approx(6.0));
}

TEST_CASE("runs may be as wrong as blur makes them, and no more, in rows and in columns") {
    const Widths good = widths(10);
    const struct {
        Widths widths;
        bool is_one;
    } cases[] = {
        // A run may be 0.7 modules off, the middle one 1.2: a module is a seventh of all.
        {{10, 10, 30, 10, 10}, true},  {{19, 10, 30, 10, 10}, true},  {{20, 10, 30, 10, 10}, false},
        {{10, 19, 30, 10, 10}, true},  {{10, 20, 30, 10, 10}, false}, {{10, 10, 30, 19, 10}, true},
        {{10, 10, 30, 20, 10}, false}, {{10, 10, 30, 10, 19}, true},  {{10, 10, 30, 10, 20}, false},
        {{3, 10, 30, 10, 10}, true},   {{2, 10, 30, 10, 10}, false},  {{10, 3, 30, 10, 10}, true},
        {{10, 2, 30, 10, 10}, false},  {{10, 10, 59, 10, 10}, true},  {{10, 10, 62, 10, 10}, false},
        {{10, 10, 14, 10, 10}, true},  {{10, 10, 13, 10, 10}, false},
    };
    for (const auto& [wrong, is_one] : cases) {
        CAPTURE(wrong[0]);
        CAPTURE(wrong[1]);
        CAPTURE(wrong[2]);
        CAPTURE(wrong[3]);
        CHECK(is_found(wrong, good) == is_one);
        CHECK(is_found(good, wrong) == is_one);
    }
    // Less than a pixel a module is nothing to build upon: 6 pixels of 7.
    CHECK(is_found({1, 1, 3, 1, 1}, {1, 1, 3, 1, 1}));
    CHECK_FALSE(is_found({1, 1, 2, 1, 1}, {1, 1, 3, 1, 1}));
}

TEST_CASE("a pattern may be seen up to three and a half times as narrow as high") {
    CHECK(is_found(widths(4), widths(14)));
    CHECK_FALSE(is_found(widths(4), widths(15)));
    CHECK(is_found(widths(14), widths(4)));
    CHECK_FALSE(is_found(widths(15), widths(4)));
}

TEST_CASE("a pattern at the edge of its picture is found") {
    for (const int side : {7 * 4, 7 * 4 + 1}) {
        auto picture = paper(side, side);
        draw(picture, side - 28, side - 28, widths(4), widths(4));
        const auto found = find_finder_patterns(picture);
        REQUIRE(found.size() == 1);
        CHECK(away(found[0].middle, side - 14, side - 14) < 0.01);
        CHECK(count_finder_patterns(picture, 1) == 1);
    }
}

TEST_CASE("what is seen in most rows comes first, and one row is not enough") {
    auto picture = paper(300, 120);
    draw_about(picture, 40, 60, 2);
    draw_about(picture, 120, 60, 6);
    draw_about(picture, 220, 60, 4);
    const auto found = find_finder_patterns(picture);
    REQUIRE(found.size() == 3);
    CHECK(found[0].seen == 18);
    CHECK(found[1].seen == 12);
    CHECK(found[2].seen == 6);
    CHECK(found[0].middle.x == doctest::Approx(120));
    CHECK_FALSE(is_found(widths(3), {3, 3, 1, 3, 3})); // a core of one row
}

TEST_CASE(
    "patterns are counted in every so many rows, if their diagonals agree, to some hundreds") {
    auto picture = paper(400, 400);
    for (int i = 0; i < 9; ++i) {
        draw_about(picture, 40 + i % 3 * 100, 40 + i / 3 * 100, 4);
    }
    CHECK(count_finder_patterns(picture, 1) == 9);
    CHECK(count_finder_patterns(picture, 5) == 9);
    CHECK(count_finder_patterns(picture, 12) == 9); // as high as a core
    // A cross has the rows and the columns of a pattern, and other diagonals.
    auto cross = paper(100, 100);
    for (int i = -14; i < 14; ++i) {
        const int ring = std::abs(2 * i + 1) / 8; // half modules of 4
        const bool dark = ring < 3 ? ring < 2 : true;
        for (int j = -6; j < 6; ++j) {
            const std::uint8_t grey = dark && !(ring >= 2 && ring < 3) ? 20 : 220;
            cross.pixels[cross.index(50 + i, 50 + j)] = grey;
            cross.pixels[cross.index(50 + j, 50 + i)] = grey;
        }
    }
    CHECK(count_finder_patterns(cross, 1) == 0);
    CHECK(count_finder_patterns({}, 1) == 0);
    auto crowd = paper(22 * 9, 22 * 9);
    for (int i = 0; i < 22 * 22; ++i) {
        draw(crowd, 1 + i % 22 * 9, 1 + i / 22 * 9, widths(1), widths(1));
    }
    CHECK(count_finder_patterns(crowd, 1) == 400);
}

TEST_CASE("three patterns that stand square are a code, the one between the others its corner") {
    auto picture = paper(500, 500);
    draw_about(picture, 80, 90, 4);
    draw_about(picture, 280, 90, 4);
    draw_about(picture, 80, 290, 4);
    const auto found = find_finders(picture);
    REQUIRE_FALSE(found.empty());
    CHECK(away(found[0].corner, 80, 90) < 1.0);
    const bool right_first = found[0].right.x > 200;
    CHECK(away(right_first ? found[0].right : found[0].below, 280, 90) < 1.0);
    CHECK(away(right_first ? found[0].below : found[0].right, 80, 290) < 1.0);
    CHECK(found.size() <= 3);
}

TEST_CASE("of four patterns those belong together that are alike and far apart") {
    // The fourth stands square as well, but near, or is of another size.
    const struct { int x, y, module; } others[] = {{80, 170, 4}, {160, 90, 4}, {80, 420, 9}};
    for (const auto& other : others) {
        CAPTURE(other.x);
        CAPTURE(other.y);
        auto picture = paper(500, 500);
        draw_about(picture, 80, 90, 4);
        draw_about(picture, 320, 90, 4);
        draw_about(picture, 80, 330, 4);
        draw_about(picture, other.x, other.y, other.module);
        const auto found = find_finders(picture);
        REQUIRE_FALSE(found.empty());
        CHECK(away(found[0].corner, 80, 90) < 1.0);
        CHECK(std::max(found[0].right.x, found[0].below.x) == doctest::Approx(320).epsilon(0.01));
        CHECK(std::max(found[0].right.y, found[0].below.y) == doctest::Approx(330).epsilon(0.01));
    }
}

TEST_CASE("patterns in a row, askew or nearer than any code has them are none of a code") {
    const auto count = [](int x, int y) {
        auto picture = paper(500, 500);
        draw_about(picture, 200, 200, 4);
        draw_about(picture, 360, 200, 4);
        draw_about(picture, x, y, 4);
        return find_finders(picture).size();
    };
    CHECK(count(200, 360) == 1);
    CHECK(count(100, 200) == 0); // in a row
    CHECK(count(125, 338) == 1); // at 118°
    CHECK(count(115, 338) == 0); // at 122°
    // A corner that is nearer to another pattern than 6 of its modules; the other's are smaller.
    const auto count_near = [](int apart) {
        auto picture = paper(300, 300);
        draw_about(picture, 100, 100, 8);
        draw_about(picture, 260, 100, 8);
        draw(picture, 72, 100 + apart - 10, widths(8), widths(3));
        return find_finders(picture).size();
    };
    CHECK(count_near(46) == 1);
    CHECK(count_near(50) == 2);
}

} // namespace finders_test
