#include "render/number.h"
#include "support/random.h"

#include <cmath>
#include <cstdlib>
#include <doctest/doctest.h>
#include <limits>
#include <stdexcept>

using namespace thawslip;

namespace {

std::string number(double value, int decimals) {
    std::string out = "<";
    render::append_number(out, value, decimals);
    return out.substr(1);
}

} // namespace

TEST_CASE("a number is as short as PDF allows: no zeros at the end, none before the point") {
    // ISO 32000-1, 7.3.3 "Numeric Objects": "4." and "-.002" are real numbers; exponents are not.
    struct Case {
        double value;
        int decimals;
        const char* written;
    };
    const Case cases[] = {
        {0.0, 3, "0"},
        {-0.0, 3, "0"},
        {1.0, 3, "1"},
        {100.0, 0, "100"},
        {100.0, 3, "100"},
        {0.5, 3, ".5"},
        {-0.5, 3, "-.5"},
        {0.001, 3, ".001"},
        {0.012, 3, ".012"},
        {1.05, 3, "1.05"},
        {-1.205, 3, "-1.205"},
        {733.8384, 3, "733.838"},
        {0.1 + 0.2, 6, ".3"},
        {2.5, 0, "3"},   // halves go away from zero,
        {-2.5, 0, "-3"}, // on both sides
        {0.0004, 3, "0"},
        {-0.0004, 3, "0"}, // never "-0"
        {-0.0005, 3, "-.001"},
        {0.9999, 3, "1"},
        {-0.99951, 3, "-1"},
        {999'999'999.0, 0, "999999999"},
        {123'456'789.123456, 6, "123456789.123456"},
        {1e-300, 6, "0"},
        {4.1 / 2048.0, 9, ".002001953"},
        {999'999'999.0, 9, "999999999"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.value);
        CAPTURE(c.decimals);
        CHECK(number(c.value, c.decimals) == c.written);
    }
}

TEST_CASE("a fixed number has all its digits") {
    CHECK(render::fixed(0.0, 3) == "0.000");
    CHECK(render::fixed(-0.0001, 3) == "0.000");
    CHECK(render::fixed(-0.05, 3) == "-0.050");
    CHECK(render::fixed(12.0, 3) == "12.000");
    CHECK(render::fixed(7.25, 1) == "7.3");
    CHECK(render::fixed(7.0, 0) == "7");
}

TEST_CASE("what no sheet has is refused, not written") {
    std::string out;
    for (const double value :
         {1e9, -1e9, 1e300, std::numeric_limits<double>::infinity(),
          -std::numeric_limits<double>::infinity(), std::numeric_limits<double>::quiet_NaN()}) {
        CAPTURE(value);
        CHECK_THROWS_AS(render::append_number(out, value, 3), std::domain_error);
        CHECK_THROWS_AS(render::fixed(value, 3), std::domain_error);
    }
    CHECK(out.empty());
}

TEST_CASE("a number read back is the number rounded, whatever it was") {
    test_support::Random random{7};
    for (int i = 0; i < 5000; ++i) {
        const int decimals = static_cast<int>(random.below(10));
        const double value = random.between(-1.0, 1.0) * std::pow(10.0, random.between(-6.0, 8.0));
        const double half = 0.5 * std::pow(10.0, -decimals);
        CAPTURE(value);
        CAPTURE(decimals);
        const auto written = number(value, decimals);
        CHECK(std::abs(std::strtod(written.c_str(), nullptr) - value) <=
              half + std::abs(value) * 1e-15);
        CHECK(written.find_first_not_of("-.0123456789") == std::string::npos);
        CHECK(std::strtod(render::fixed(value, decimals).c_str(), nullptr) ==
              std::strtod(written.c_str(), nullptr));
    }
}
