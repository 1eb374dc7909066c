#include "kitchen/number_text.h"

#include <algorithm>
#include <array>
#include <numeric>
#include <optional>
#include <string>

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

constexpr std::array<Vulgar, 18> vulgar_fractions = {{
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
    {"⅐", {1, 7}},
    {"⅑", {1, 9}},
    {"⅒", {1, 10}},
}};

/// The length of the stroke of a fraction at `at`: a slash or U+2044; 0 where there is none.
std::size_t fraction_stroke(std::string_view text, std::size_t at) {
    for (const std::string_view stroke : {"/", "⁄"}) {
        if (text.substr(std::min(at, text.size())).starts_with(stroke)) {
            return stroke.size();
        }
    }
    return 0;
}

/// "½" or "1/2" at `at`.
std::optional<ReadAmount> read_fraction(std::string_view text, std::size_t at) {
    for (const auto& vulgar : vulgar_fractions) {
        if (text.substr(at).starts_with(vulgar.text)) {
            return ReadAmount{vulgar.amount, at + vulgar.text.size()};
        }
    }
    const auto over = read_digits(text, at, 3);
    const auto stroke = over ? fraction_stroke(text, over->end) : 0;
    if (stroke == 0) {
        return std::nullopt;
    }
    const auto under = read_digits(text, over->end + stroke, 3);
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

constexpr std::string_view too_exact =
    "a number has at most 6 digits and 4 decimals here, more than any kitchen needs";

bool is_point(std::string_view text, std::size_t at) {
    return at < text.size() && (text[at] == '.' || text[at] == ',');
}

std::size_t past_digits(std::string_view text, std::size_t at) {
    while (at < text.size() && is_digit(text[at])) {
        ++at;
    }
    return at;
}

bool goes_on_as_a_number(std::string_view text, std::size_t at) {
    return past_digits(text, at) > at || (is_point(text, at) && past_digits(text, at + 1) > at + 1);
}

/// "1,000" and "1.000" may stand for 1 or for 1000, but not "0,125" or "1.250".
bool is_ambiguous(std::string_view text, const Digits& whole) {
    if (whole.value == 0 || whole.value > 999 || !is_point(text, whole.end)) {
        return false;
    }
    const auto end = past_digits(text, whole.end + 1);
    const auto group = text.substr(whole.end + 1, end - whole.end - 1);
    return group.size() == 3 && (text[whole.end] == ',' || group == "000");
}

/// Why the digits at `at` are no number.
std::optional<TextFault> refuse_digits(std::string_view text, std::size_t at) {
    if (past_digits(text, at) == at) {
        return std::nullopt;
    }
    const auto whole = read_digits(text, at, most_digits);
    if (!whole) {
        return TextFault{at, std::string{too_exact}};
    }
    if (is_ambiguous(text, *whole)) {
        const auto end = past_digits(text, whole->end + 1);
        const std::string group{text.substr(whole->end + 1, end - whole->end - 1)};
        const auto written = std::to_string(whole->value);
        return TextFault{at, "it may mean " + written + " or " + written + group +
                                 ": write one of them without " +
                                 (text[whole->end] == ',' ? "a comma" : "a point")};
    }
    const auto stroke = fraction_stroke(text, whole->end);
    const auto under_at = whole->end + stroke;
    if (stroke > 0 && past_digits(text, under_at) > under_at && !read_fraction(text, at)) {
        return TextFault{at, "a fraction has up to 3 digits above and below, and no 0 below"};
    }
    return std::nullopt;
}

std::optional<ReadAmount> find_amount(std::string_view text, std::size_t at) {
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

bool is_proper_fraction(const Amount& amount) {
    return amount.denominator > 1 && amount.numerator < amount.denominator;
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

Result<ReadAmount, TextFault> read_amount(std::string_view text, std::size_t at) {
    if (auto refusal = refuse_digits(text, at)) {
        return Failure{std::move(*refusal)};
    }
    auto amount = find_amount(text, at);
    if (!amount) {
        return Failure{TextFault{at, {}}};
    }
    if (goes_on_as_a_number(text, amount->end)) {
        return Failure{TextFault{at, std::string{too_exact}}};
    }
    return *amount;
}

Result<ReadRange, TextFault> read_range(std::string_view text, std::size_t at) {
    const auto low = read_amount(text, at);
    if (!low) {
        return Failure{low.fault()};
    }
    const auto [first, first_end] = low.value();
    const ReadRange alone{first, first, first_end};
    const auto mark_at = skip_spaces(text, first_end);
    const auto mark = range_mark(text, mark_at);
    if (mark == 0) {
        return alone;
    }
    const auto high_at = skip_spaces(text, mark_at + mark);
    const auto high = read_amount(text, high_at);
    if (!high) {
        return high.fault().message.empty() ? Result<ReadRange, TextFault>{alone}
                                            : Failure{high.fault()};
    }
    const auto [second, end] = high.value();
    const bool closed_up = mark_at == first_end && high_at == mark_at + mark;
    if (closed_up && first.denominator == 1 && first.numerator > 0 && is_proper_fraction(second)) {
        const Amount mixed{first.numerator * second.denominator + second.numerator,
                           second.denominator};
        return ReadRange{mixed, mixed, end};
    }
    return ReadRange{first, second, end};
}

} // namespace thawslip::kitchen
