#include "code/capacity.h"
#include "code/codewords.h"
#include "code/draw.h"
#include "code/grade.h"
#include "code/patterns.h"
#include "code/picture.h"

#include <algorithm>
#include <cstdlib>
#include <doctest/doctest.h>
#include <vector>

using namespace thawslip::code;

namespace {

constexpr int pixels_per_module = 6;
constexpr Reflectance ideal{1.0, 0.0};

Symbol sample(int version, Level level) {
    const std::string text = "THAW IN REFRIGERATOR";
    return draw({{Mode::Alphanumeric, text}}, version, level);
}

/// Shows one module of the picture as it is not.
void turn_over(GreyPicture& picture, int x, int y) {
    for (int row = 0; row < pixels_per_module; ++row) {
        for (int column = 0; column < pixels_per_module; ++column) {
            const int left = (x + quiet_zone_modules) * pixels_per_module + column;
            const int top = (y + quiet_zone_modules) * pixels_per_module + row;
            auto& pixel = picture.pixels[static_cast<std::size_t>(top * picture.width + left)];
            pixel = static_cast<std::uint8_t>(255 - pixel);
        }
    }
}

/// Turns over one module of each of the first `count` codewords of block 0.
void spoil(GreyPicture& picture, const Symbol& symbol, int count) {
    const std::vector<int> map = codeword_map(symbol.version);
    const std::vector<int> blocks = block_map(symbol.version, symbol.level);
    for (int word = 0; count > 0; ++word) {
        if (blocks[static_cast<std::size_t>(word)] != 0) {
            continue;
        }
        const auto at = static_cast<int>(std::ranges::find(map, word) - map.begin());
        turn_over(picture, at % symbol.side, at / symbol.side);
        --count;
    }
}

} // namespace

TEST_CASE("a symbol drawn well on white paper gets the best grade") {
    const Symbol symbol = sample(5, Level::Medium);
    const auto quality = grade(picture_of(symbol, pixels_per_module), symbol, ideal);
    REQUIRE(quality);
    CHECK(quality->symbol_contrast == doctest::Approx(1.0));
    CHECK(quality->modulation == doctest::Approx(1.0));
    CHECK(quality->fixed_pattern_grade == doctest::Approx(4.0));
    CHECK(quality->unused_error_correction == doctest::Approx(1.0));
    CHECK(letter(quality->overall()) == 'A');
}

TEST_CASE(
    "a wrong module anywhere in an alignment pattern costs a grade of it, none beside it does") {
    const Symbol symbol = sample(2, Level::Medium); // its one alignment pattern is about (18, 18)
    const auto fixed = [&](int x, int y) {
        auto picture = picture_of(symbol, pixels_per_module);
        turn_over(picture, x, y);
        const auto quality = grade(picture, symbol, ideal);
        REQUIRE(quality);
        return quality->fixed_pattern_grade;
    };
    for (const int x : {16, 18, 20}) {
        for (const int y : {16, 18, 20}) {
            CAPTURE(x);
            CAPTURE(y);
            CHECK(fixed(x, y) == doctest::Approx((5 * 4 + 3) / 6.0));
        }
    }
    CHECK(fixed(21, 18) == doctest::Approx(4.0));
    CHECK(fixed(18, 15) == doctest::Approx(4.0));
}

// ISO/IEC 18004:2015, table 9: how many codewords a block has for correction, and how many of them
// the smallest symbols keep back (from memory). An error whose place is unknown takes two.
TEST_CASE("the smallest symbols keep some of their error correction back") {
    struct Case {
        int version;
        Level level;
        double left;
    };
    constexpr Case cases[] = {{1, Level::Low, 7 - 3},       {1, Level::Medium, 10 - 2},
                              {1, Level::Quartile, 13 - 1}, {1, Level::High, 17 - 1},
                              {2, Level::Low, 10 - 2},      {2, Level::Medium, 16},
                              {3, Level::Low, 15 - 1},      {4, Level::Low, 20}};
    for (const auto& [version, level, left] : cases) {
        CAPTURE(version);
        CAPTURE(left);
        const auto symbol = draw({{Mode::Alphanumeric, "PEAR"}}, version, level);
        auto picture = picture_of(symbol, pixels_per_module);
        spoil(picture, symbol, 1);
        const auto quality = grade(picture, symbol, ideal);
        REQUIRE(quality);
        CHECK(quality->unused_error_correction == doctest::Approx(1.0 - 2.0 / left));
    }
}

TEST_CASE("coloured paper costs contrast, by the thresholds of ISO/IEC 15415") {
    struct Case {
        double paper;
        char grade;
    };
    constexpr Case cases[] = {{0.70, 'A'}, {0.69, 'B'}, {0.55, 'B'}, {0.54, 'C'}, {0.40, 'C'},
                              {0.39, 'D'}, {0.20, 'D'}, {0.19, 'F'}, {0.00, 'F'}};
    const Symbol symbol = sample(3, Level::High);
    for (const auto& [paper, expected] : cases) {
        CAPTURE(paper);
        const auto quality = grade(picture_of(symbol, pixels_per_module), symbol, {paper, 0.0});
        REQUIRE(quality);
        CHECK(letter(quality->contrast_grade) == expected);
        CHECK(letter(quality->overall()) == expected);
    }
}

TEST_CASE("each wrong codeword uses up two of its block's error-correction codewords") {
    const Symbol symbol = sample(10, Level::Medium); // 26 for each of 5 blocks
    struct Case {
        int wrong;
        char grade;
    };
    constexpr Case cases[] = {{1, 'A'}, {4, 'A'}, {5, 'B'},  {6, 'B'}, {7, 'C'},
                              {8, 'C'}, {9, 'D'}, {10, 'F'}, {13, 'F'}};
    for (const auto& [wrong, expected] : cases) {
        CAPTURE(wrong);
        GreyPicture picture = picture_of(symbol, pixels_per_module);
        spoil(picture, symbol, wrong);
        const auto quality = grade(picture, symbol, ideal);
        REQUIRE(quality);
        CHECK(quality->unused_error_correction == doctest::Approx(1.0 - 2.0 * wrong / 26.0));
        CHECK(letter(quality->unused_error_correction_grade) == expected);
        CHECK(quality->fixed_pattern_grade == doctest::Approx(4.0));
    }
}

TEST_CASE("a wrong module in a finder pattern costs that pattern a grade") {
    const Symbol symbol = sample(10, Level::Medium);
    GreyPicture picture = picture_of(symbol, pixels_per_module);
    turn_over(picture, 3, 3);
    const auto quality = grade(picture, symbol, ideal);
    REQUIRE(quality);
    CHECK(quality->fixed_pattern_grade == doctest::Approx((3 + 4 + 4 + 4 + 4 + 4) / 6.0));
    CHECK(letter(quality->fixed_pattern_damage_grade) == 'B');
    CHECK(quality->unused_error_correction == doctest::Approx(1.0));
}

TEST_CASE("wrong modules of a timing pattern cost grades by their share: 7, 11 and 14 in 100") {
    // ISO/IEC 15415:2011 with ISO/IEC 18004:2015, grading of fixed patterns (from memory).
    for (const int version : {2, 7, 12, 20, 30, 40}) {
        const Symbol symbol = sample(version, Level::Low);
        const int length = symbol.side - 16; // between two finders with their separators
        std::vector<int> free;               // columns where no alignment pattern lies across
        for (int x = 8; x < 8 + length; ++x) {
            const auto lies_across = [x](Module middle) {
                return middle.y == 6 && std::abs(x - middle.x) <= 2;
            };
            if (std::ranges::none_of(alignment_middles(version), lies_across)) {
                free.push_back(x);
            }
        }
        GreyPicture picture = picture_of(symbol, pixels_per_module);
        for (int wrong = 0;; ++wrong) {
            CAPTURE(version);
            CAPTURE(wrong);
            const int expected = wrong == 0                   ? 4
                                 : 100 * wrong <= 7 * length  ? 3
                                 : 100 * wrong <= 11 * length ? 2
                                 : 100 * wrong <= 14 * length ? 1
                                                              : 0;
            // Of six patterns the five others are whole.
            CHECK(grade(picture, symbol, ideal)->fixed_pattern_grade ==
                  doctest::Approx((20 + expected) / 6.0));
            if (expected == 0 || static_cast<std::size_t>(wrong) == free.size()) {
                break;
            }
            turn_over(picture, free[static_cast<std::size_t>(wrong)], 6);
        }
    }
}

TEST_CASE("ink in the quiet zone counts as damage to the finder beside it") {
    const Symbol symbol = sample(4, Level::Medium);
    GreyPicture picture = picture_of(symbol, pixels_per_module);
    turn_over(picture, -2, 3);
    CHECK(grade(picture, symbol, ideal)->fixed_pattern_grade < 4.0);
}

TEST_CASE("greyer modules cost modulation before they cost error correction") {
    const Symbol symbol = sample(5, Level::Low);
    GreyPicture picture = picture_of(symbol, pixels_per_module);
    const auto side = static_cast<std::size_t>(picture.width);
    // The lower half of the symbol is printed faintly: dark there is 45 % grey.
    for (std::size_t i = side * side / 2; i < side * side; ++i) {
        picture.pixels[i] = std::max<std::uint8_t>(picture.pixels[i], 115);
    }
    const auto quality = grade(picture, symbol, ideal);
    REQUIRE(quality);
    CHECK(quality->modulation == doctest::Approx(2.0 * (0.5 - 115.0 / 255.0)));
    CHECK(letter(quality->modulation_grade) == 'F');
    CHECK(letter(quality->unused_error_correction_grade) == 'A');
}

TEST_CASE("a picture of another shape, or too coarse, is not graded") {
    const Symbol symbol = sample(2, Level::Low);
    CHECK(!grade(picture_of(symbol, 5), symbol, ideal));
    CHECK(!grade(picture_of(sample(3, Level::Low), 6), symbol, ideal));
    CHECK(!grade({}, symbol, ideal));
    CHECK(!grade({198, 198, {}}, symbol, ideal));
}
