// The vulgar fractions of Unicode, read and printed, against ICU's numeric values (The Unicode
// Standard, UnicodeData.txt, fields 5 and 8).

#include "kitchen/measures/number_text.h"
#include "kitchen/measures/unit_text.h"

#include <doctest/doctest.h>
#include <string>
#include <unicode/uchar.h>
#include <unicode/unistr.h>

namespace fractions_test {

using namespace thawslip::kitchen;

namespace {

std::string utf8(UChar32 code_point) {
    std::string bytes;
    icu::UnicodeString{code_point}.toUTF8String(bytes);
    return bytes;
}

/// Whether one character is a fraction of one: "½", but neither "⅟", which is only the upper half
/// of one, nor "↉", which is nothing.
bool is_fraction(UChar32 code_point) {
    const double value = u_getNumericValue(code_point);
    return u_getIntPropertyValue(code_point, UCHAR_DECOMPOSITION_TYPE) == U_DT_FRACTION &&
           value > 0.0 && value < 1.0;
}

} // namespace

TEST_CASE("every fraction of Unicode is read as the number that it is, alone and mixed") {
    int fractions = 0;
    for (UChar32 code_point = 0; code_point <= UCHAR_MAX_VALUE; ++code_point) {
        if (!is_fraction(code_point)) {
            continue;
        }
        const double value = u_getNumericValue(code_point);
        const auto text = utf8(code_point);
        CAPTURE(text);
        const auto alone = read_amount(text, 0);
        REQUIRE(alone.ok());
        CHECK(alone.value().amount.value() == doctest::Approx(value).epsilon(1e-12));
        CHECK(alone.value().end == text.size());
        const auto mixed = read_amount("2" + text + " kg", 0);
        REQUIRE(mixed.ok());
        CHECK(mixed.value().amount.value() == doctest::Approx(2.0 + value).epsilon(1e-12));
        ++fractions;
    }
    CHECK(fractions >= 18); // Unicode 5.2, 2009, has them all
}

TEST_CASE("whatever fraction is printed is read back as the amount it stands for") {
    int printed = 0;
    for (const int denominator : {2, 3, 4, 5, 6, 8}) {
        for (int numerator = 1; numerator < 4 * denominator; ++numerator) {
            const Amount amount{numerator, denominator};
            const auto text = to_text(Quantity{amount, amount, Unit::Teaspoon, "", "oil", ""},
                                      {.units = Units::Us});
            CAPTURE(text);
            const auto read = read_amount(text, 0);
            REQUIRE(read.ok());
            // Cooks measure to eighths and thirds: fifths and sixths are rounded to those.
            const bool exact = denominator != 5 && denominator != 6;
            CHECK(read.value().amount.value() ==
                  doctest::Approx(amount.value()).epsilon(exact ? 1e-12 : 0.2));
            ++printed;
        }
    }
    CHECK(printed > 100);
}

} // namespace fractions_test
