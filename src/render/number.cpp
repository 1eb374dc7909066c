#include "render/number.h"

#include <array>
#include <cassert>
#include <charconv>
#include <cmath>
#include <stdexcept>

namespace thawslip::render {
namespace {

constexpr std::array powers_of_ten{1LL,           10LL,           100LL,       1'000LL,
                                   10'000LL,      100'000LL,      1'000'000LL, 10'000'000LL,
                                   100'000'000LL, 1'000'000'000LL};

/// `value` in units of 10^-decimals.
long long scaled(double value, int decimals) {
    assert(decimals >= 0 && static_cast<std::size_t>(decimals) < powers_of_ten.size());
    if (!(std::abs(value) < 1e9)) {
        throw std::domain_error("a number that cannot be drawn: no sheet is that large");
    }
    return std::llround(value *
                        static_cast<double>(powers_of_ten[static_cast<std::size_t>(decimals)]));
}

/// Appends `part`, which stands for `part` / 10^decimals, with all its digits.
void append_digits(std::string& out, long long part, int decimals) {
    const auto begin = out.size();
    append_whole(out, part);
    const auto width = static_cast<std::size_t>(decimals);
    const auto length = out.size() - begin;
    if (length < width) {
        out.insert(begin, width - length, '0');
    }
}

} // namespace

void append_whole(std::string& out, long long value) {
    std::array<char, 24> digits;
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value).ptr;
    out.append(digits.data(), end);
}

void append_number(std::string& out, double value, int decimals) {
    auto units = scaled(value, decimals);
    if (units < 0) {
        out += '-';
        units = -units;
    }
    while (decimals > 0 && units % 10 == 0) {
        units /= 10;
        --decimals;
    }
    const auto one = powers_of_ten[static_cast<std::size_t>(decimals)];
    // PDF and SVG both read ".5"; a zero before the point would only be longer.
    if (units >= one || decimals == 0) {
        append_whole(out, units / one);
    }
    if (decimals > 0) {
        out += '.';
        append_digits(out, units % one, decimals);
    }
}

std::string fixed(double value, int decimals) {
    auto units = scaled(value, decimals);
    std::string out;
    if (units < 0) {
        out += '-';
        units = -units;
    }
    const auto one = powers_of_ten[static_cast<std::size_t>(decimals)];
    append_whole(out, units / one);
    if (decimals > 0) {
        out += '.';
        append_digits(out, units % one, decimals);
    }
    return out;
}

} // namespace thawslip::render
