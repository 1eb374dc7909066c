// Modules felt one after the other from two finder patterns on, on labels that are bent, turned and
// partly hidden.

#include "code/capacity.h"
#include "code/draw.h"
#include "code/recover/lattice.h"
#include "code/recover/recover.h"
#include "code/segments.h"

#include <algorithm>
#include <cmath>
#include <doctest/doctest.h>
#include <string>
#include <utility>
#include <vector>

namespace lattice_test {

using namespace thawslip::code;

namespace {

const std::string words = "PLUM AND GINGER COMPOTE\nSERVES 4 * BAG K7Q-2M4-9XC";

Symbol symbol_of(int version) {
    return draw(segment(words, group_of(version)).segments, version, Level::Medium);
}

/// How a label lies in a picture: turned, and bowed by so many modules in its middle.
struct Pose {
    double module = 6.0; ///< pixels
    double turn = 0.0;   ///< radians
    double bow = 0.0;    ///< of rows, modules down in the middle of the symbol
    double narrow = 1.0; ///< how much narrower its modules are than high
    double tilt = 0.0;   ///< how much smaller its right side is seen than its left
};

/// A symbol's label in a picture.
class Label {
public:
    Label(const Symbol& symbol, const Pose& pose) : symbol_{symbol}, pose_{pose} {}

    Place seen(double x, double y) const {
        const double side = symbol_.side;
        const double away = 1.0 + pose_.tilt * (x / side - 0.5);
        const double u = (x - side / 2.0) * pose_.module * pose_.narrow / away;
        const double v = (y - side / 2.0 + sag(x)) * pose_.module / away;
        return {middle() + u * std::cos(pose_.turn) - v * std::sin(pose_.turn),
                middle() + u * std::sin(pose_.turn) + v * std::cos(pose_.turn)};
    }
    /// The map at a module's middle.
    Anchor anchor(Module at) const {
        const Place here = seen(at.x + 0.5, at.y + 0.5);
        const auto step = [&](double x, double y) {
            const Place there = seen(at.x + 0.5 + x, at.y + 0.5 + y);
            const Place back = seen(at.x + 0.5 - x, at.y + 0.5 - y);
            return Place{(there.x - back.x) / 2.0, (there.y - back.y) / 2.0};
        };
        return {{here, step(1.0, 0.0), step(0.0, 1.0)}, at};
    }
    /// \param hidden modules that lie under paper: from the first to the second
    GreyPicture picture(const std::vector<std::pair<Module, Module>>& hidden = {}) const {
        const int size = static_cast<int>(2.0 * middle());
        GreyPicture picture{size, size, {}};
        for (int y = 0; y < size; ++y) {
            for (int x = 0; x < size; ++x) {
                int dark = 0;
                for (const auto& [dx, dy] :
                     {Place{0.2, 0.2}, {0.8, 0.2}, {0.2, 0.8}, {0.8, 0.8}, {0.5, 0.5}}) {
                    dark += is_dark(module_at(x + dx, y + dy), hidden) ? 1 : 0;
                }
                picture.pixels.push_back(static_cast<std::uint8_t>(220 - 38 * dark));
            }
        }
        return picture;
    }

private:
    double middle() const { return std::ceil((symbol_.side / 2.0 * 1.42 + 8.0) * pose_.module); }
    double sag(double x) const {
        const double share = x / symbol_.side;
        return 4.0 * pose_.bow * share * (1.0 - share);
    }
    Module module_at(double x, double y) const {
        const double across = x - middle(), down = y - middle();
        const double u = across * std::cos(pose_.turn) + down * std::sin(pose_.turn);
        const double v = down * std::cos(pose_.turn) - across * std::sin(pose_.turn);
        const double seen_right = u / (pose_.module * pose_.narrow);
        const double away = 1.0 / (1.0 - pose_.tilt * seen_right / symbol_.side);
        const double column = seen_right * away + symbol_.side / 2.0;
        const double row = v / pose_.module * away + symbol_.side / 2.0 - sag(column);
        return {static_cast<int>(std::floor(column)), static_cast<int>(std::floor(row))};
    }
    bool is_dark(Module at, const std::vector<std::pair<Module, Module>>& hidden) const {
        const bool under = std::ranges::any_of(hidden, [at](const auto& area) {
            return at.x >= area.first.x && at.y >= area.first.y && at.x <= area.second.x &&
                   at.y <= area.second.y;
        });
        return !under && is_inside(at, symbol_.side) && symbol_.dark[index_of(at, symbol_.side)];
    }

    const Symbol& symbol_;
    Pose pose_;
};

/// How many modules are taken for what they are not; all where nothing is seen.
int count_wrong(const Symbol& symbol, const std::optional<SeenModules>& seen) {
    if (!seen || seen->darkness.size() != symbol.dark.size()) {
        return static_cast<int>(symbol.dark.size());
    }
    int wrong = 0;
    for (std::size_t i = 0; i < symbol.dark.size(); ++i) {
        wrong += (seen->darkness[i] > 0.0F) == symbol.dark[i] ? 0 : 1;
    }
    return wrong;
}

std::vector<Anchor> corner_and(const Label& label, bool right, int side) {
    return {label.anchor({3, 3}), label.anchor(right ? Module{side - 4, 3} : Module{3, side - 4})};
}

} // namespace

TEST_CASE("on a label that is bent every module is felt, nearly as far as any label is bent") {
    // Farther, modules are taken for those beside them: measured.
    const struct {
        int version;
        double bow_right; ///< modules, where the pattern beside the corner's is on the right
        double bow_below;
    } cases[] = {{3, 1.2, 1.5}, {5, 1.2, 1.8}, {8, 2.2, 3.0}, {12, 3.8, 3.8}};
    for (const auto& [version, bow_right, bow_below] : cases) {
        const auto symbol = symbol_of(version);
        for (const double narrow : {1.0, 0.7}) {
            for (const bool right : {true, false}) {
                CAPTURE(version);
                CAPTURE(narrow);
                CAPTURE(right);
                const Label label{symbol, {5.0, 0.3, right ? bow_right : bow_below, narrow}};
                const auto anchors = corner_and(label, right, symbol.side);
                CHECK(count_wrong(symbol, seen_from(label.picture(), anchors, version)) == 0);
            }
        }
    }
}

TEST_CASE("the two patterns at the ends of a symbol's diagonal are enough") {
    for (const int version : {4, 10}) {
        for (const double bow : {0.0, 0.7, -0.7}) {
            CAPTURE(version);
            CAPTURE(bow);
            const auto symbol = symbol_of(version);
            const Label label{symbol, {5.0, -0.7, bow, 0.9}};
            const int far = symbol.side - 4;
            const auto seen = seen_from(label.picture(),
                                        {label.anchor({far, 3}), label.anchor({3, far})}, version);
            CHECK(count_wrong(symbol, seen) == 0);
        }
    }
}

TEST_CASE("ink is as much darker than what is around it as paper is lighter, to the last row") {
    const auto symbol = symbol_of(4);
    const Label label{symbol, {}};
    const auto seen = seen_from(label.picture(), corner_and(label, true, symbol.side), 4);
    REQUIRE(seen);
    CHECK(seen->version == 4);
    for (std::size_t i = 0; i < symbol.dark.size(); ++i) {
        CAPTURE(i);
        // Ink is 30 and paper 220.
        CHECK(seen->darkness[i] * (symbol.dark[i] ? 1.0F : -1.0F) ==
              doctest::Approx(95).epsilon(0.1));
    }
}

TEST_CASE("what is hidden is crossed on what is around it") {
    const auto symbol = symbol_of(8);
    const int side = symbol.side;
    const Label label{symbol, {5.0, 0.2, 1.2, 1.0}};
    // The third finder pattern, a smear across the middle, and a corner that is torn off.
    const std::vector<std::pair<Module, Module>> hidden = {
        {{0, side - 8}, {7, side - 1}}, {{18, 20}, {34, 23}}, {{side - 6, side - 7}, {side, side}}};
    const auto seen = seen_from(label.picture(hidden), corner_and(label, true, side), 8);
    REQUIRE(seen);
    int wrong = 0;
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            const bool is_hidden = std::ranges::any_of(hidden, [&](const auto& area) {
                return x >= area.first.x && y >= area.first.y && x <= area.second.x &&
                       y <= area.second.y;
            });
            const auto at = index_of({x, y}, side);
            wrong += !is_hidden && (seen->darkness[at] > 0.0F) != symbol.dark[at] ? 1 : 0;
        }
    }
    CHECK(wrong == 0);
}

TEST_CASE("nothing is seen where what every symbol of the version shows is not") {
    const auto symbol = symbol_of(5);
    const Label label{symbol, {}};
    const auto anchors = corner_and(label, true, symbol.side);
    const auto picture = label.picture();
    CHECK(seen_from(picture, anchors, 5));
    CHECK_FALSE(seen_from(picture, anchors, 9));
    CHECK_FALSE(seen_from(
        {picture.width, picture.height, std::vector<std::uint8_t>(picture.pixels.size(), 220)},
        anchors, 5));
    CHECK_FALSE(seen_from({}, anchors, 5));
}

TEST_CASE("a code is recovered however it lies, whichever of its finder patterns is hidden") {
    for (const int version : {3, 6}) {
        const auto symbol = symbol_of(version);
        const int far = symbol.side - 8;
        for (const double turn : {0.6, 2.1, 4.4}) {
            for (const auto& [x, y] : {std::pair{0, 0}, {far, 0}, {0, far}}) {
                CAPTURE(version);
                CAPTURE(turn);
                CAPTURE(x);
                CAPTURE(y);
                const Label label{symbol, {5.0, turn, 0.5, 0.85}};
                const auto picture = label.picture({{{x, y}, {x + 7, y + 7}}});
                CHECK(recovered(picture, enough_modules) == words);
            }
        }
    }
}

TEST_CASE("a code is recovered that is bent, narrow or seen askew, nearly as far as any is") {
    // Farther, nothing is read: measured. The third pattern hidden is the hardest.
    enum class Hidden { Corner, Below };
    const struct {
        int version;
        Hidden hidden;
        Pose pose;
    } cases[] = {
        {4, Hidden::Below, {5.0, 0.4, 1.2}},
        {4, Hidden::Below, {5.0, 0.4, -1.2}},
        {4, Hidden::Below, {5.0, 0.4, 0.0, 0.7}},
        {4, Hidden::Below, {5.0, 0.4, 0.0, 1.0, 0.1}},
        {4, Hidden::Corner, {5.0, 0.4, 2.0}},
        {4, Hidden::Corner, {5.0, 0.4, 0.0, 1.0, -0.2}},
        {8, Hidden::Below, {5.0, 0.4, 2.0}},
        {8, Hidden::Below, {5.0, 0.4, 0.0, 0.7}},
        {8, Hidden::Below, {5.0, 0.4, 0.0, 1.0, -0.2}},
        {8, Hidden::Corner, {5.0, 0.4, 0.0, 1.0, 0.3}},
    };
    for (const auto& [version, hidden, pose] : cases) {
        CAPTURE(version);
        CAPTURE(pose.bow);
        CAPTURE(pose.narrow);
        CAPTURE(pose.tilt);
        const auto symbol = symbol_of(version);
        const int y = hidden == Hidden::Below ? symbol.side - 8 : 0;
        const auto picture = Label{symbol, pose}.picture({{{0, y}, {7, y + 7}}});
        CHECK(recovered(picture, enough_modules) == words);
    }
}

TEST_CASE("no more modules are felt for than is said") {
    const auto symbol = symbol_of(4);
    const auto picture = Label{symbol, {}}.picture();
    CHECK(recovered(picture, symbol.side * symbol.side) == words);
    CHECK(recovered(picture, symbol.side * symbol.side - 1) == std::nullopt);
}

} // namespace lattice_test
