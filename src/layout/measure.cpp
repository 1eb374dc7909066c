#include "layout/measure.h"

#include "layout/stock.h"

#include <cmath>
#include <fmt/format.h>
#include <numeric>

namespace thawslip::layout {
namespace {

/// Whether `number` is whole but for what sums of binary fractions leave over.
bool is_whole(double number) {
    return std::abs(number - std::round(number)) < 1e-6;
}

/// At most `decimals` places, without zeros at the end and without "-0".
std::string decimal(double number, int decimals) {
    auto text = fmt::format("{:.{}f}", number, decimals);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') {
            text.pop_back();
        }
    }
    return text == "-0" ? "0" : text;
}

/// "4 3/16", "5/32", "2"; the last resort of a ruler, sixty-fourths, is the finest.
std::string inches(double number) {
    constexpr int finest = 64;
    constexpr double most_with_fractions = 1000; // beyond this, and for no numbers, decimals
    if (!(std::abs(number) < most_with_fractions) || !is_whole(number * finest)) {
        return decimal(number, 4);
    }
    const long parts = std::lround(std::abs(number) * finest);
    const long divisor = std::gcd(parts % finest, static_cast<long>(finest));
    const char* sign = number < 0 && parts != 0 ? "-" : "";
    if (parts % finest == 0) {
        return fmt::format("{}{}", sign, parts / finest);
    }
    const auto fraction = fmt::format("{}/{}", parts % finest / divisor, finest / divisor);
    return parts < finest ? sign + fraction
                          : fmt::format("{}{} {}", sign, parts / finest, fraction);
}

std::string number_of(Length length, Unit unit) {
    return unit == Unit::Inch ? inches(length.in_inches()) : decimal(length.in_millimetres(), 2);
}

const char* name_of(Unit unit) {
    return unit == Unit::Inch ? "in" : "mm";
}

} // namespace

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

std::string measured(Length length, Unit unit) {
    return number_of(length, unit) + " " + name_of(unit);
}

std::string measured(Size size, Unit unit) {
    return number_of(size.width, unit) + " x " + measured(size.height, unit);
}

} // namespace thawslip::layout
