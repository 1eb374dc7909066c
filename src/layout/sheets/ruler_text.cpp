#include "layout/sheets/ruler_text.h"

#include "layout/sheets/stock.h"

#include <cmath>
#include <fmt/format.h>
#include <numeric>
#include <optional>

namespace thawslip::layout {
namespace {

/// Whether `number` is whole but for what sums of binary fractions leave over.
bool is_whole(double number) {
    return std::abs(number - std::round(number)) < 1e-6;
}

/// At most `decimals` places, of which there is one or more, without zeros at the end and without
/// "-0".
std::string decimal(double number, int decimals) {
    auto text = fmt::format("{:.{}f}", number, decimals);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') {
        text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

/// An inch in parts of which sixty-fourths, a ruler's finest, and thirds are both whole numbers.
constexpr int parts_of_an_inch = 192;

struct Fraction {
    long whole = 0;
    long numerator = 0;
    long denominator = 1;
};

/// Lowest terms of a number that is not negative; nothing when a ruler has no such fraction.
std::optional<Fraction> fraction_of(double inches) {
    constexpr double most = 1000; // beyond this, and for no numbers, decimals
    if (!(inches < most) || !is_whole(inches * parts_of_an_inch)) {
        return std::nullopt;
    }
    const long parts = std::lround(inches * parts_of_an_inch);
    const long rest = parts % parts_of_an_inch;
    const long divisor = std::gcd(rest, long{parts_of_an_inch});
    const Fraction fraction{parts / parts_of_an_inch, rest / divisor, parts_of_an_inch / divisor};
    return fraction.denominator <= 64 ? std::optional{fraction} : std::nullopt;
}

/// "4 3/16", "5/32", "2", "3 1/3"; decimals where there is no such fraction.
std::string inches(double number) {
    const auto fraction = fraction_of(std::abs(number));
    if (!fraction) {
        return decimal(number, 4);
    }
    const char* sign = number < 0 && (fraction->whole + fraction->numerator) > 0 ? "-" : "";
    if (fraction->numerator == 0) {
        return fmt::format("{}{}", sign, fraction->whole);
    }
    const auto part = fmt::format("{}/{}", fraction->numerator, fraction->denominator);
    return fraction->whole == 0 ? sign + part : fmt::format("{}{} {}", sign, fraction->whole, part);
}

std::string number_of(Length length, Unit unit) {
    return unit == Unit::Inch ? inches(length.in_inches()) : decimal(length.in_millimetres(), 2);
}

const char* name_of(Unit unit) {
    return unit == Unit::Inch ? "in" : "mm";
}

} // namespace

bool is_fraction_of_an_inch(Length length) {
    return fraction_of(std::abs(length.in_inches())).has_value();
}

Unit unit_of(Size size) {
    const bool round_in_inches =
        is_whole(size.width.in_inches() * 16) && is_whole(size.height.in_inches() * 16);
    const bool round_in_millimetres =
        is_whole(size.width.in_millimetres() * 2) && is_whole(size.height.in_millimetres() * 2);
    return round_in_inches && !round_in_millimetres ? Unit::Inch : Unit::Millimetre;
}

Unit unit_of(const Stock& stock) {
    return unit_of(stock.sheet) == Unit::Inch ? Unit::Inch : unit_of(stock.cell);
}

std::string ruler_text(Length length, Unit unit) {
    return number_of(length, unit) + " " + name_of(unit);
}

std::string ruler_text(Size size, Unit unit) {
    return number_of(size.width, unit) + " x " + ruler_text(size.height, unit);
}

} // namespace thawslip::layout
