#include "layout/sheets/calibration.h"
#include "unit/layout/stocks.h"

#include <cmath>
#include <doctest/doctest.h>
#include <optional>
#include <random>
#include <utility>
#include <vector>

namespace thawslip::layout {
namespace {

const std::vector<Point> crosses = {
    {25_mm, 25_mm}, {185_mm, 25_mm}, {25_mm, 272_mm}, {185_mm, 272_mm}};

/// What someone with a perfect ruler reads off a page of this printer.
std::vector<CrossReading> readings_of(const Correction& printer) {
    std::vector<CrossReading> readings;
    for (const auto& cross : crosses) {
        readings.push_back({cross, printer(cross)});
    }
    return readings;
}

double distance_mm(Point a, Point b) {
    return std::hypot((a.x - b.x).in_millimetres(), (a.y - b.y).in_millimetres());
}

/// A printer that turns the page by an angle, after scaling it and before moving it.
Correction turning_printer(double degrees, double scale_x, double scale_y, Point offset) {
    const double angle = degrees * std::acos(-1.0) / 180;
    return {scale_x * std::cos(angle), scale_y * std::cos(angle), -scale_y * std::sin(angle),
            offset, scale_x * std::sin(angle)};
}

} // namespace

TEST_CASE("a printer that does as asked needs no correction") {
    const auto correction = correction_from(readings_of({}));
    REQUIRE(correction.ok());
    CHECK(correction.value().scale_x == doctest::Approx(1));
    CHECK(correction.value().scale_y == doctest::Approx(1));
    CHECK(std::abs(correction.value().skew) < 1e-12);
    CHECK(std::abs(correction.value().skew_y) < 1e-12);
    CHECK(std::abs(correction.value().offset.x.in_points()) < 1e-9);
}

TEST_CASE("after correction everything is printed where it was wanted, to 0.01 mm") {
    std::mt19937 random{17};
    const auto between = [&](double low, double high) {
        return low + (high - low) * (static_cast<double>(random()) / 4294967295.0);
    };
    for (int round = 0; round < 500; ++round) {
        const auto printer = turning_printer(
            between(-0.9, 0.9), between(0.96, 1.04), between(0.96, 1.04),
            {Length::millimetres(between(-9, 9)), Length::millimetres(between(-9, 9))});
        const auto correction = correction_from(readings_of(printer));
        REQUIRE(correction.ok());
        for (const Point wanted :
             {Point{}, Point{210_mm, 0_mm}, Point{0_mm, 297_mm}, Point{100_mm, 150_mm}}) {
            REQUIRE(distance_mm(printer(correction.value()(wanted)), wanted) < 0.01);
        }
    }
}

TEST_CASE("readings to a quarter of a millimetre still bring the page within half of one") {
    std::mt19937 random{2026};
    const auto printer = turning_printer(0.3, 0.985, 1.01, {2_mm, -1.5_mm});
    for (int round = 0; round < 200; ++round) {
        auto readings = readings_of(printer);
        for (auto& reading : readings) {
            for (const auto coordinate : {&Point::x, &Point::y}) {
                const double step = static_cast<double>(random() % 1000) / 999.0 - 0.5;
                reading.printed.*coordinate += Length::millimetres(step / 2);
            }
        }
        const auto correction = correction_from(readings);
        REQUIRE(correction.ok());
        REQUIRE(distance_mm(printer(correction.value()({105_mm, 148_mm})), {105_mm, 148_mm}) < 0.5);
    }
}

TEST_CASE("what no printer does is refused as a slip") {
    using Kind = CalibrationFault::Kind;
    struct Case {
        const char* name;
        Correction printer;
        Kind kind;
        double found;
        const char* words;
    };
    const Case cases[] = {
        {"fit to page", turning_printer(0, 0.941, 0.941, {}), Kind::Scale, 0.941,
         "the page came out at 94.1 % of its size, expected 95 to 105 %: print the ruler page at "
         "actual size, without \"fit to page\""},
        {"too large", turning_printer(0, 1.0, 1.06, {}), Kind::Scale, 1.06, nullptr},
        {"too far", turning_printer(0, 1, 1, {0_mm, -11_mm}), Kind::Offset, 11,
         "the page is moved by 11.0 mm, expected at most 10 mm: look how the paper lies in the "
         "tray"},
        {"crooked", turning_printer(1.5, 1, 1, {}), Kind::Skew, 1.5,
         "the page is crooked by 1.5 degrees, expected at most 1: look how the paper lies in the "
         "tray"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.name);
        const auto correction = correction_from(readings_of(c.printer));
        REQUIRE_FALSE(correction.ok());
        CHECK(correction.fault().kind == c.kind);
        CHECK(correction.fault().found == doctest::Approx(c.found));
        if (c.words != nullptr) {
            CHECK(in_words(correction.fault()) == c.words);
        }
    }
}

TEST_CASE("a cross read three millimetres wrong is found, since there are more than needed") {
    auto readings = readings_of({});
    readings[2].printed.x += 3_mm;
    const auto correction = correction_from(readings);
    REQUIRE_FALSE(correction.ok());
    CHECK(correction.fault().kind == CalibrationFault::Kind::Misread);
    CHECK(correction.fault().found == doctest::Approx(0.75)); // a quarter of the slip on each
    CHECK(in_words(correction.fault())
              .starts_with("the readings do not agree: a cross is 0.8 mm from where the others put "
                           "it, expected at most"));
}

TEST_CASE("two crosses, or crosses in one line, are not enough") {
    auto readings = readings_of({});
    readings.resize(2);
    CHECK(correction_from(readings).fault().kind == CalibrationFault::Kind::TooFewCrosses);
    CHECK(correction_from({}).fault().kind == CalibrationFault::Kind::TooFewCrosses);
    const std::vector<CrossReading> line = {{{25_mm, 25_mm}, {25_mm, 25_mm}},
                                            {{50_mm, 50_mm}, {50_mm, 50_mm}},
                                            {{99_mm, 99_mm}, {99_mm, 99_mm}}};
    CHECK(correction_from(line).fault().kind == CalibrationFault::Kind::CrossesInLine);
    CHECK(in_words(correction_from(line).fault()) ==
          "the crosses measured lie in one line, expected a triangle");
    CHECK(in_words(correction_from(readings).fault()) ==
          "2 crosses were measured, expected at least 3");
    const std::vector<CrossReading> same(4, {{25_mm, 25_mm}, {25_mm, 25_mm}});
    CHECK(correction_from(same).fault().kind == CalibrationFault::Kind::CrossesInLine);
}

TEST_CASE("crosses within a hundredth of their distance lie in one line, whatever the distance") {
    for (const double apart : {20.0, 160.0, 400.0}) {
        CAPTURE(apart);
        const auto kind = [apart](double share) {
            std::vector<CrossReading> readings;
            for (const auto& [x, y] :
                 {std::pair{0.0, 0.0}, std::pair{1.0, 0.0}, std::pair{0.5, share}}) {
                const Point at{Length::millimetres(20 + apart * x),
                               Length::millimetres(20 + apart * y)};
                readings.push_back({at, at});
            }
            const auto correction = correction_from(readings);
            return correction ? std::nullopt : std::optional{correction.fault().kind};
        };
        CHECK(kind(0.007) == CalibrationFault::Kind::CrossesInLine);
        CHECK_FALSE(kind(0.012).has_value());
        CHECK_FALSE(kind(0.5).has_value());
    }
}

} // namespace thawslip::layout
