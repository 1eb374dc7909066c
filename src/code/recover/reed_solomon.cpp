#include "code/recover/reed_solomon.h"

#include <algorithm>
#include <array>

namespace thawslip::code {
namespace {

constexpr std::size_t order = 255; // of the field's powers

struct FieldTables {
    std::array<std::uint8_t, order> powers{};
    std::array<std::size_t, order + 1> logarithms{};
};

constexpr FieldTables field = [] {
    FieldTables tables;
    unsigned value = 1;
    for (std::size_t i = 0; i < order; ++i) {
        tables.powers.at(i) = static_cast<std::uint8_t>(value);
        tables.logarithms.at(value) = i;
        value = (value << 1U) ^ ((value & 0x80U) != 0 ? 0x11DU : 0U);
    }
    return tables;
}();

std::uint8_t power(std::size_t exponent) {
    return field.powers.at(exponent % order);
}

std::uint8_t times(std::uint8_t a, std::uint8_t b) {
    return a == 0 || b == 0 ? std::uint8_t{0}
                            : power(field.logarithms.at(a) + field.logarithms.at(b));
}

/// \pre b is not 0
std::uint8_t over(std::uint8_t a, std::uint8_t b) {
    return a == 0 ? std::uint8_t{0}
                  : power(field.logarithms.at(a) + order - field.logarithms.at(b));
}

/// Coefficients, that of the lowest power first.
using Polynomial = std::vector<std::uint8_t>;

/// The highest power, counted from 1: 0 for nothing at all.
std::size_t length_of(const Polynomial& p) {
    const auto last = std::find_if(p.rbegin(), p.rend(), [](auto c) { return c != 0; });
    return static_cast<std::size_t>(p.rend() - last);
}

std::uint8_t value_at(const Polynomial& p, std::uint8_t x) {
    std::uint8_t value = 0;
    for (std::size_t i = p.size(); i-- > 0;) {
        value = static_cast<std::uint8_t>(times(value, x) ^ p[i]);
    }
    return value;
}

Polynomial product(const Polynomial& a, const Polynomial& b) {
    Polynomial result(a.size() + b.size(), 0);
    for (std::size_t i = 0; i < a.size(); ++i) {
        for (std::size_t j = 0; j < b.size(); ++j) {
            result[i + j] = static_cast<std::uint8_t>(result[i + j] ^ times(a[i], b[j]));
        }
    }
    return result;
}

/// p − q · factor · x^shift, in p.
void subtract(Polynomial& p, const Polynomial& q, std::uint8_t factor, std::size_t shift) {
    p.resize(std::max(p.size(), q.size() + shift), 0);
    for (std::size_t i = 0; i < q.size(); ++i) {
        p[i + shift] = static_cast<std::uint8_t>(p[i + shift] ^ times(q[i], factor));
    }
}

Polynomial syndromes_of(const std::vector<std::uint8_t>& word, std::size_t check) {
    const Polynomial reversed{word.rbegin(), word.rend()};
    Polynomial syndromes;
    for (std::size_t i = 0; i < check; ++i) {
        syndromes.push_back(value_at(reversed, power(i)));
    }
    return syndromes;
}

/// What says where is wrong, and how much.
struct Solution {
    Polynomial locator;
    Polynomial evaluator;
};

/// Euclid's algorithm on x^check and the syndromes times the erasures' locator, stopped half way.
Solution solved(std::size_t check, Polynomial remainder, std::size_t erased) {
    Polynomial before(check + 1, 0);
    before.back() = 1;
    Polynomial locator_before;
    Polynomial locator{1};
    const std::size_t enough = (check + erased) / 2;
    while (length_of(remainder) > enough) {
        std::swap(before, remainder);
        std::swap(locator_before, locator);
        const std::size_t length = length_of(before);
        while (length_of(remainder) >= length) {
            const std::size_t shift = length_of(remainder) - length;
            const auto factor = over(remainder[length_of(remainder) - 1], before[length - 1]);
            subtract(remainder, before, factor, shift);
            subtract(locator, locator_before, factor, shift);
        }
    }
    return {std::move(locator), std::move(remainder)};
}

/// The slope of a polynomial: in this field every other term of it is nothing.
std::uint8_t slope_at(const Polynomial& p, std::uint8_t x) {
    std::uint8_t value = 0;
    for (std::size_t i = 1; i < p.size(); i += 2) {
        const auto term = x == 0 ? (i == 1 ? 1 : 0) : power(field.logarithms.at(x) * (i - 1));
        value = static_cast<std::uint8_t>(value ^ times(p[i], static_cast<std::uint8_t>(term)));
    }
    return value;
}

} // namespace

std::optional<std::vector<std::uint8_t>> corrected(std::vector<std::uint8_t> word,
                                                   std::size_t check,
                                                   const std::vector<std::size_t>& erased,
                                                   std::size_t spare) {
    if (erased.size() + spare > check) {
        return std::nullopt;
    }
    const auto syndromes = syndromes_of(word, check);
    if (length_of(syndromes) == 0) {
        return word;
    }
    const auto place_of = [&](std::size_t at) { return word.size() - 1 - at; };
    Polynomial erasures{1};
    for (const std::size_t at : erased) {
        erasures = product(erasures, {1, power(place_of(at))});
    }
    auto known = product(syndromes, erasures);
    known.resize(check);
    const auto solution = solved(check, std::move(known), erased.size());
    const std::size_t found = std::max<std::size_t>(length_of(solution.locator), 1) - 1;
    if (2 * found + erased.size() + spare > check) {
        return std::nullopt;
    }
    const auto locator = product(solution.locator, erasures);
    for (std::size_t at = 0; at < word.size(); ++at) {
        const auto inverse = power(order - place_of(at));
        const auto slope = slope_at(locator, inverse);
        if (value_at(locator, inverse) == 0 && slope != 0) {
            const auto wrong = over(value_at(solution.evaluator, inverse), slope);
            word[at] = static_cast<std::uint8_t>(word[at] ^ times(wrong, power(place_of(at))));
        }
    }
    const bool is_right = length_of(syndromes_of(word, check)) == 0;
    return is_right ? std::optional{std::move(word)} : std::nullopt;
}

} // namespace thawslip::code
