#include "kitchen/number_text.h"

#include "base/utf8.h"

#include <algorithm>
#include <array>
#include <numeric>

namespace thawslip::kitchen {
namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

/// Six digits before the point are enough for grams, and keep every product far from overflow.
constexpr std::size_t most_digits = 6;
constexpr std::size_t most_decimals = 4;

struct Digits {
    std::int64_t value = 0;
    std::size_t end = 0;
};

std::optional<Digits> read_digits(std::string_view text, std::size_t at, std::size_t most) {
    Digits digits{0, at};
    while (digits.end < text.size() && is_digit(text[digits.end])) {
        if (digits.end - at == most) {
            return std::nullopt;
        }
        digits.value = digits.value * 10 + (text[digits.end] - '0');
        ++digits.end;
    }
    return digits.end == at ? std::nullopt : std::optional{digits};
}

Amount reduced(std::int64_t numerator, std::int64_t denominator) {
    const auto divisor = std::max<std::int64_t>(std::gcd(numerator, denominator), 1);
    return {numerator / divisor, denominator / divisor};
}

struct Vulgar {
    std::string_view text;
    Amount amount;
};

constexpr std::array<Vulgar, 15> vulgar_fractions = {{
    {"½", {1, 2}},
    {"⅓", {1, 3}},
    {"⅔", {2, 3}},
    {"¼", {1, 4}},
    {"¾", {3, 4}},
    {"⅕", {1, 5}},
    {"⅖", {2, 5}},
    {"⅗", {3, 5}},
    {"⅘", {4, 5}},
    {"⅙", {1, 6}},
    {"⅚", {5, 6}},
    {"⅛", {1, 8}},
    {"⅜", {3, 8}},
    {"⅝", {5, 8}},
    {"⅞", {7, 8}},
}};

/// "½" or "1/2" at `at`.
std::optional<ReadAmount> read_fraction(std::string_view text, std::size_t at) {
    for (const auto& vulgar : vulgar_fractions) {
        if (text.substr(at).starts_with(vulgar.text)) {
            return ReadAmount{vulgar.amount, at + vulgar.text.size()};
        }
    }
    const auto over = read_digits(text, at, 3);
    if (!over || over->end >= text.size() || text[over->end] != '/') {
        return std::nullopt;
    }
    const auto under = read_digits(text, over->end + 1, 3);
    if (!under || under->value == 0) {
        return std::nullopt;
    }
    return ReadAmount{reduced(over->value, under->value), under->end};
}

/// A whole number goes on with a fraction: "1½", "1 1/2".
std::optional<ReadAmount> with_fraction(std::string_view text, const Digits& whole) {
    const auto at = skip_spaces(text, whole.end);
    const auto fraction = at < text.size() ? read_fraction(text, at) : std::nullopt;
    if (!fraction || fraction->amount.numerator >= fraction->amount.denominator) {
        return std::nullopt;
    }
    const auto& part = fraction->amount;
    return ReadAmount{reduced(whole.value * part.denominator + part.numerator, part.denominator),
                      fraction->end};
}

/// A whole number goes on with decimals: "2.2", "2,25".
std::optional<ReadAmount> with_decimals(std::string_view text, const Digits& whole) {
    if (whole.end >= text.size() || (text[whole.end] != '.' && text[whole.end] != ',')) {
        return std::nullopt;
    }
    const auto decimals = read_digits(text, whole.end + 1, most_decimals);
    if (!decimals) {
        return std::nullopt;
    }
    std::int64_t scale = 1;
    for (std::size_t i = whole.end + 1; i < decimals->end; ++i) {
        scale *= 10;
    }
    return ReadAmount{reduced(whole.value * scale + decimals->value, scale), decimals->end};
}

/// The length of a dash or the word "to" between two numbers; 0 where there is none.
std::size_t range_mark(std::string_view text, std::size_t at) {
    for (const std::string_view mark : {"-", "–", "—", "to "}) {
        if (text.substr(std::min(at, text.size())).starts_with(mark)) {
            return mark.size();
        }
    }
    return 0;
}

} // namespace

std::size_t skip_spaces(std::string_view text, std::size_t at) {
    constexpr std::string_view no_break = "\u00A0";
    constexpr std::string_view narrow = "\u202F";
    while (at < text.size()) {
        const auto rest = text.substr(at);
        const std::size_t width = rest.front() == ' '          ? 1
                                  : rest.starts_with(no_break) ? no_break.size()
                                  : rest.starts_with(narrow)   ? narrow.size()
                                                               : 0;
        if (width == 0) {
            break;
        }
        at += width;
    }
    return at;
}

std::optional<ReadAmount> read_amount(std::string_view text, std::size_t at) {
    if (at >= text.size()) {
        return std::nullopt;
    }
    if (auto fraction = read_fraction(text, at)) {
        return fraction;
    }
    const auto whole = read_digits(text, at, most_digits);
    if (!whole) {
        return std::nullopt;
    }
    if (auto mixed = with_fraction(text, *whole)) {
        return mixed;
    }
    if (auto decimal = with_decimals(text, *whole)) {
        return decimal;
    }
    return ReadAmount{{whole->value, 1}, whole->end};
}

std::optional<ReadRange> read_range(std::string_view text, std::size_t at) {
    const auto low = read_amount(text, at);
    if (!low) {
        return std::nullopt;
    }
    const auto mark_at = skip_spaces(text, low->end);
    if (const auto mark = range_mark(text, mark_at); mark > 0) {
        if (const auto high = read_amount(text, skip_spaces(text, mark_at + mark))) {
            return ReadRange{low->amount, high->amount, high->end};
        }
    }
    return ReadRange{low->amount, low->amount, low->end};
}

} // namespace thawslip::kitchen
