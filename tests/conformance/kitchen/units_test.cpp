// Kitchen measures against NIST's tables and the program GNU units.

#include "kitchen/measures/unit_text.h"
#include "kitchen/measures/units.h"
#include "support/skip.h"

#include <cmath>
#include <cstdio>
#include <doctest/doctest.h>
#include <fmt/format.h>
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
