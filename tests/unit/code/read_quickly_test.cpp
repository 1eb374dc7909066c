#include "code/filters.h"
#include "code/finders.h"
#include "code/picture.h"
#include "code/read_picture.h"
#include "code/symbol.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <random>

using namespace thawslip;
using namespace thawslip::code;

namespace {

constexpr int wide = 1280;
constexpr int high = 720;

GreyPicture frame_of(std::uint8_t grey) {
    return {wide, high, std::vector<std::uint8_t>(std::size_t{wide} * high, grey)};
}

/// Lays a picture into a frame, made fainter: black becomes `black`, white `white`.
void lay(GreyPicture& frame, const GreyPicture& picture, int left, int top, int black = 0,
         int white = 255) {
    for (int y = 0; y < picture.height; ++y) {
        for (int x = 0; x < picture.width; ++x) {
            const bool is_dark = picture.pixels[picture.index(x, y)] < 128;
            frame.pixels[frame.index(left + x, top + y)] =
                static_cast<std::uint8_t>(is_dark ? black : white);
        }
    }
}

GreyPicture code_picture(const std::string& text, int pixels) {
    const auto symbol =
        choose_symbol({text}, Length::millimetres(60), {}, Length::millimetres(0.5));
    REQUIRE(symbol.ok());
    return picture_of(symbol.value().symbol, pixels);
}

/// A finder pattern, 3 pixels a module, in a quiet zone of one module.
GreyPicture finder() {
    constexpr int pixels = 3;
    constexpr int side = 9;
    GreyPicture picture{side * pixels, side * pixels, {}};
    for (int i = 0; i < picture.width * picture.height; ++i) {
        const int x = i % picture.width / pixels - 4;
        const int y = i / picture.width / pixels - 4;
        const int away = std::max(std::abs(x), std::abs(y));
        picture.pixels.push_back(away == 3 || away < 2 ? 0 : 255);
    }
    return picture;
}

/// A frame with a code at its left and so many finder patterns at its right.
GreyPicture with_finders(int count) {
    auto frame = frame_of(255);
    lay(frame, code_picture("BARLEY STEW", 4), 20, 20);
    const auto pattern = finder();
    constexpr int a_row = 25;
    for (int i = 0; i < count; ++i) {
        lay(frame, pattern, 300 + i % a_row * 36, 10 + i / a_row * 36);
    }
    return frame;
}

} // namespace

TEST_CASE("a frame's codes are read wherever they are, in weak light too") {
    if (!can_read_back()) {
        MESSAGE("skipped: built without a reader of codes");
        return;
    }
    auto frame = frame_of(190);
    lay(frame, code_picture("BARLEY STEW", 3), 900, 500);
    lay(frame, code_picture("PLUM COMPOTE", 5), 40, 30, 70, 150);
    auto texts = read_quickly(frame);
    std::ranges::sort(texts);
    CHECK(texts == std::vector<std::string>{"BARLEY STEW", "PLUM COMPOTE"});
}

TEST_CASE("a frame's code is read through the noise of a weak camera") {
    if (!can_read_back()) {
        MESSAGE("skipped: built without a reader of codes");
        return;
    }
    for (const unsigned noise : {12U, 30U, 50U}) { // levels
        auto frame = frame_of(255);
        lay(frame, code_picture("BARLEY STEW", 6), 500, 300);
        std::minstd_rand random{noise};
        for (auto& pixel : frame.pixels) {
            pixel = static_cast<std::uint8_t>(60 + pixel / 3 + random() % noise);
        }
        CAPTURE(noise);
        CHECK(count_finder_patterns(black_and_white(frame), 5) < 50);
        CHECK(read_quickly(frame) == std::vector<std::string>{"BARLEY STEW"});
    }
}

TEST_CASE("a frame without a code, an empty one and one that is too large have no text") {
    CHECK(read_quickly(frame_of(190)).empty());
    CHECK(read_quickly({}).empty());
    CHECK(read_quickly({3, 2, std::vector<std::uint8_t>(6)}).empty());
    CHECK(read_quickly({5000, 5000, {}}).empty()); // not even looked into
}

TEST_CASE("a frame that is made of finder patterns is not looked at") {
    if (!can_read_back()) {
        MESSAGE("skipped: built without a reader of codes");
        return;
    }
    CHECK(read_quickly(with_finders(3)) == std::vector<std::string>{"BARLEY STEW"});
    CHECK(read_quickly(with_finders(150)).empty());
    // Fourteen labels in one frame are looked at: 42 patterns, and what looks like one by chance.
    CHECK(count_finder_patterns(black_and_white(with_finders(42)), 5) <= 60);
}

TEST_CASE("finder patterns are counted in weak and uneven light") {
    for (const int black : {0, 40, 90}) {
        auto frame = frame_of(0);
        for (int i = 0; i < wide * high; ++i) {
            frame.pixels[static_cast<std::size_t>(i)] =
                static_cast<std::uint8_t>(120 + i % wide / 12);
        }
        for (int i = 0; i < 20; ++i) {
            const int left = 30 + i * 60;
            lay(frame, finder(), left, 100, black, 120 + left / 12);
        }
        CHECK(count_finder_patterns(black_and_white(frame), 1) == 20);
    }
}
