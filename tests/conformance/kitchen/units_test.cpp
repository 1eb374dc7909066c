// Kitchen measures against NIST's tables and the program GNU units.

#include "kitchen/measures/unit_text.h"
#include "kitchen/measures/units.h"
#include "support/skip.h"

#include <cmath>
#include <cstdio>
#include <doctest/doctest.h>
#include <fmt/format.h>
#include <iterator>
#include <optional>
#include <string>

using namespace thawslip::kitchen;

namespace {

/// What `units` makes of one `from` in `to`; nothing where it is not installed.
std::optional<double> by_gnu_units(const std::string& from, const std::string& to) {
    const auto command = fmt::format("units -t -o %.15g '{}' '{}' 2>/dev/null", from, to);
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) {
        return std::nullopt;
    }
    double value = 0;
    const bool read = std::fscanf(pipe, "%lf", &value) == 1;
    pclose(pipe);
    return read ? std::optional{value} : std::nullopt;
}

} // namespace

TEST_CASE("exact factors agree with NIST's to the digits printed") {
    // NIST SP 430 and NIST Handbook 44, appendix C: units of liquid volume and avoirdupois mass.
    struct Row {
        Unit unit;
        double base;
        double last_digit;
    };
    const Row rows[] = {
        {Unit::Teaspoon, 4.928'921'6, 1e-7},
        {Unit::Tablespoon, 14.786'765, 1e-6},
        {Unit::FluidOunce, 29.573'529'6, 1e-7},
        {Unit::Cup, 236.588'237, 1e-6},
        {Unit::Pint, 473.176, 1e-3},
        {Unit::Quart, 946.353, 1e-3},
        {Unit::Gallon, 3785.41, 1e-2},
        {Unit::Ounce, 28.349'523'125, 1e-9},
        {Unit::Pound, 453.592'37, 1e-5},
    };
    for (const auto& row : rows) {
        CAPTURE(row.base);
        CHECK(std::abs(factor(row.unit, Measures::Us).value() - row.base) <= row.last_digit);
    }
}

TEST_CASE("every unit in every drawer is so many grams or millilitres") {
    // Metric prefixes: SI, NIST SP 330, 2019. Pound and ounce: NIST SP 811, 2008, appendix B. US
    // measures: NIST Handbook 44, appendix C, from the gallon of 231 cubic inches. Imperial: Units
    // of Measurement Regulations 1995 (UK), from the gallon of 4.54609 l; its cup of 10 fluid
    // ounces and its spoons, the metric and the Australian drawer: common practice, no source.
    using enum Unit;
    struct Row {
        Unit unit;
        double us, metric, australian, imperial;
    };
    constexpr double us_gallon = 231 * 16.387064;
    constexpr double gallon = 4546.09;
    const Row rows[] = {
        {Count, 1, 1, 1, 1},
        {Milligram, 0.001, 0.001, 0.001, 0.001},
        {Gram, 1, 1, 1, 1},
        {Kilogram, 1000, 1000, 1000, 1000},
        {Ounce, 453.59237 / 16, 453.59237 / 16, 453.59237 / 16, 453.59237 / 16},
        {Pound, 453.59237, 453.59237, 453.59237, 453.59237},
        {Millilitre, 1, 1, 1, 1},
        {Centilitre, 10, 10, 10, 10},
        {Decilitre, 100, 100, 100, 100},
        {Litre, 1000, 1000, 1000, 1000},
        {Teaspoon, us_gallon / 768, 5, 5, 5},
        {Tablespoon, us_gallon / 256, 15, 20, 15},
        {FluidOunce, us_gallon / 128, gallon / 160, gallon / 160, gallon / 160},
        {Cup, us_gallon / 16, 250, 250, gallon / 16},
        {Pint, us_gallon / 8, gallon / 8, gallon / 8, gallon / 8},
        {Quart, us_gallon / 4, gallon / 4, gallon / 4, gallon / 4},
        {Gallon, us_gallon, gallon, gallon, gallon},
    };
    CHECK(std::size(rows) == static_cast<std::size_t>(Gallon) + 1);
    for (const auto& row : rows) {
        CAPTURE(static_cast<int>(row.unit));
        const auto ours = [&](Measures measures) { return factor(row.unit, measures).value(); };
        CHECK(ours(Measures::Us) == doctest::Approx(row.us).epsilon(1e-12));
        CHECK(ours(Measures::Metric) == doctest::Approx(row.metric).epsilon(1e-12));
        CHECK(ours(Measures::Australian) == doctest::Approx(row.australian).epsilon(1e-12));
        CHECK(ours(Measures::Imperial) == doctest::Approx(row.imperial).epsilon(1e-12));
        const bool weighs = row.unit >= Milligram && row.unit <= Pound;
        CHECK(dimension(row.unit) == (row.unit == Count ? Dimension::Count
                                      : weighs          ? Dimension::Mass
                                                        : Dimension::Volume));
        CHECK(is_metric(row.unit) == ((row.unit >= Milligram && row.unit <= Kilogram) ||
                                      (row.unit >= Millilitre && row.unit <= Litre)));
    }
}

TEST_CASE("US measures turn into the round figures of NIST's kitchen table") {
    // NIST, Cooking Measurement Equivalencies; Metric Household. (Its pint, 480 ml, and its pound,
    // 454 g, are not the roundest numbers near the exact ones; they are held to 2.5 % below.)
    struct Row {
        Amount amount;
        Unit unit;
        const char* metric;
    };
    const Row rows[] = {
        {{1, 4}, Unit::Cup, "60 ml"},        {{1, 3}, Unit::Cup, "80 ml"},
        {{1, 2}, Unit::Cup, "120 ml"},       {{2, 3}, Unit::Cup, "160 ml"},
        {{3, 4}, Unit::Cup, "180 ml"},       {{1, 1}, Unit::Cup, "240 ml"},
        {{1, 1}, Unit::FluidOunce, "30 ml"}, {{1, 1}, Unit::Quart, "950 ml"},
        {{1, 1}, Unit::Ounce, "28 g"},
    };
    for (const auto& row : rows) {
        CAPTURE(row.metric);
        const auto turned = to_text(in_other_system({row.amount, row.unit}, Measures::Us));
        CHECK(turned == row.metric);
    }
    const auto pint = in_other_system({{1, 1}, Unit::Pint}, Measures::Us);
    CHECK(pint[0].amount.value() == doctest::Approx(480).epsilon(0.025));
    const auto pound = in_other_system({{1, 1}, Unit::Pound}, Measures::Us);
    CHECK(pound[0].amount.value() == doctest::Approx(454).epsilon(0.025));
}

TEST_CASE("factors agree with GNU units") {
    struct Row {
        Unit unit;
        Measures measures;
        const char* gnu;
        const char* base;
    };
    const Row rows[] = {
        {Unit::Teaspoon, Measures::Us, "teaspoon", "ml"},
        {Unit::Tablespoon, Measures::Us, "tablespoon", "ml"},
        {Unit::FluidOunce, Measures::Us, "usfloz", "ml"},
        {Unit::Cup, Measures::Us, "cup", "ml"},
        {Unit::Pint, Measures::Us, "uspint", "ml"},
        {Unit::Quart, Measures::Us, "usquart", "ml"},
        {Unit::Gallon, Measures::Us, "usgallon", "ml"},
        {Unit::FluidOunce, Measures::Imperial, "brfloz", "ml"},
        {Unit::Cup, Measures::Imperial, "brcup", "ml"},
        {Unit::Pint, Measures::Imperial, "brpint", "ml"},
        {Unit::Quart, Measures::Imperial, "brquart", "ml"},
        {Unit::Gallon, Measures::Imperial, "brgallon", "ml"},
        {Unit::Cup, Measures::Metric, "metriccup", "ml"},
        {Unit::Cup, Measures::Australian, "metriccup", "ml"},
        {Unit::Tablespoon, Measures::Australian, "australiatablespoon", "ml"},
        {Unit::Ounce, Measures::Us, "oz", "g"},
        {Unit::Pound, Measures::Us, "lb", "g"},
        {Unit::Decilitre, Measures::Us, "dl", "ml"},
        {Unit::Milligram, Measures::Us, "mg", "g"},
    };
    if (!by_gnu_units("m", "m")) {
        return thawslip::test_support::skip("GNU units is not installed (Debian package units)");
    }
    for (const auto& row : rows) {
        CAPTURE(row.gnu);
        const auto theirs = by_gnu_units(row.gnu, row.base);
        REQUIRE(theirs);
        const double ours = factor(row.unit, row.measures).value();
        CHECK(std::abs(ours - *theirs) <= 1e-12 * *theirs);
    }
}
