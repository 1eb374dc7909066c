// Codes that lie around a bottle: which bends are likely, and what unrolling makes of a picture.

#include "code/unroll.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <set>
#include <utility>
#include <vector>

namespace unroll_test {

using namespace thawslip::code;

namespace {

/// Finder patterns that are seen so far apart.
Finders seen(double right, double below) {
    return {{100, 100}, {100 + right, 100}, {100, 100 + below}};
}

/// How long the way between two finder patterns on a bent paper looks: an arc is seen as its sine.
double chord(const Bend& bend) {
    const auto place = [&bend](double arc) { return std::sin((arc - bend.crest) / bend.radius); };
    return bend.radius * (place(0.5) - place(-0.5));
}

/// How far what is seen is from what the bend makes of it.
double off(const Bend& bend, double right, double below) {
    const bool first = bend.around == Bend::Around::OneSide;
    return std::abs(std::log((first ? right / below : below / right) / chord(bend)));
}

} // namespace

TEST_CASE("a code that looks square may lie around any bottle or bag, its crest anywhere near") {
    const auto bends = likely_bends(seen(90, 100));
    std::set<double> radii;
    std::set<double> crests;
    std::set<std::pair<double, double>> one_side;
    for (const auto& bend : bends) {
        radii.insert(bend.radius);
        crests.insert(bend.crest);
        if (bend.around == Bend::Around::OneSide) {
            one_side.insert({bend.radius, bend.crest});
        }
    }
    // Bottles of 40, 50 and 70 mm and a bag of 110 mm, where finder patterns are 27 mm apart.
    CHECK(radii == std::set<double>{0.75, 0.95, 1.3, 2.0});
    for (const double radius : radii) {
        const double millimetres = 2.0 * radius * 27.0;
        CHECK(millimetres >= 40.0);
        CHECK(millimetres <= 110.0);
    }
    CHECK(crests == std::set<double>{-0.3, -0.15, 0.0, 0.15, 0.3});
    CHECK(one_side.size() == 20);
    CHECK(bends.size() == 40);
}

TEST_CASE(
    "bends are tried in the order in which they explain what is seen, and strange ones never") {
    for (const double right : {40.0, 55.0, 62.0, 70.0, 85.0, 100.0, 130.0, 150.0, 190.0}) {
        CAPTURE(right);
        const auto bends = likely_bends(seen(right, 100.0));
        double before = 0.0;
        for (const auto& bend : bends) {
            const double strange = off(bend, right, 100.0);
            CHECK(strange >= before - 1e-12);
            CHECK(strange <= 0.35);
            before = strange;
        }
        // None is left out that is not strange, on either side.
        std::size_t count = 0;
        for (const auto around : {Bend::Around::OneSide, Bend::Around::OtherSide}) {
            for (const double radius : {0.75, 0.95, 1.3, 2.0}) {
                for (const double crest : {-0.3, -0.15, 0.0, 0.15, 0.3}) {
                    count += off({around, radius, crest}, right, 100.0) <= 0.35 ? 1U : 0U;
                }
            }
        }
        CHECK(bends.size() == count);
    }
    CHECK(likely_bends(seen(20.0, 100.0)).empty());
    CHECK(likely_bends(seen(100.0, 20.0)).empty());
}

TEST_CASE("unrolled, finder patterns stay where they are and arcs are as long as they were") {
    // A picture whose light tells the place: the same along columns, or along rows.
    constexpr int side = 240;
    GreyPicture by_column{side, side, {}};
    GreyPicture by_row{side, side, {}};
    for (int i = 0; i < side * side; ++i) {
        by_column.pixels.push_back(static_cast<std::uint8_t>(i % side));
        by_row.pixels.push_back(static_cast<std::uint8_t>(i / side));
    }
    const Finders finders{{60, 50}, {180, 50}, {60, 190}};
    for (const auto around : {Bend::Around::OneSide, Bend::Around::OtherSide}) {
        for (const double crest : {0.0, 0.25}) {
            const Bend bend{around, 0.9, crest};
            const bool across = around == Bend::Around::OneSide;
            const auto& picture = across ? by_column : by_row;
            const double first = across ? 60 : 50;
            const double way = across ? 120 : 140;
            const auto flat = unrolled(picture, finders, bend);
            CHECK(flat.width == flat.height);
            // The middle of the code in the middle, its finder patterns one part in 1.9 apart.
            const double apart = flat.width / 1.9;
            for (const double arc : {-0.5, -0.2, 0.0, 0.3, 0.5}) {
                CAPTURE(arc);
                CAPTURE(crest);
                const double share =
                    0.9 * (std::sin((arc - crest) / 0.9) - std::sin((-0.5 - crest) / 0.9)) /
                    chord(bend);
                const int x = static_cast<int>(std::lround(flat.width / 2.0 + arc * apart - 0.5));
                const int y = flat.height / 2;
                const double wanted = first + share * way - 0.5; // a pixel's middle
                CHECK(std::abs(flat.pixels[flat.index(x, y)] - wanted) <= 1.0);
                CHECK(std::abs(flat.pixels[flat.index(x, y / 2)] - wanted) <= 1.0);
            }
        }
    }
    // Along the bottle nothing is bent.
    const auto flat = unrolled(by_row, finders, {Bend::Around::OneSide, 0.9, 0.1});
    for (const double share : {0.0, 0.25, 0.5, 1.0}) {
        const int y = static_cast<int>(
            std::lround(flat.height / 2.0 + (share - 0.5) * flat.height / 1.9 - 0.5));
        CHECK(std::abs(flat.pixels[flat.index(flat.width / 2, y)] - (49.5 + share * 140)) <= 1.0);
    }
}

TEST_CASE("what lies beyond the visible side of a bottle is not folded back into view") {
    constexpr int side = 300;
    GreyPicture by_column{side, side, {}};
    for (int i = 0; i < side * side; ++i) {
        by_column.pixels.push_back(static_cast<std::uint8_t>(i % side * 255 / side));
    }
    const Finders finders{{120, 120}, {180, 120}, {120, 180}};
    const auto flat = unrolled(by_column, finders, {Bend::Around::OneSide, 0.5, 0.0});
    const int y = flat.height / 2;
    for (int x = 1; x < flat.width; ++x) {
        CHECK(flat.pixels[flat.index(x, y)] >= flat.pixels[flat.index(x - 1, y)]);
    }
}

} // namespace unroll_test
