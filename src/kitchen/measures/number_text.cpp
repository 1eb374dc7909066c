#include "kitchen/measures/number_text.h"

#include "base/letters.h"
#include "kitchen/measures/units.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>
#include <string>

namespace thawslip::kitchen {
namespace {

using Read = Result<ReadAmount, TextFault>;

/// Six digits before the point are enough for grams, and keep every product far from overflow.
constexpr std::size_t most_digits = 6;
constexpr std::size_t most_decimals = 4;
constexpr std::size_t most_denominator_digits = 3;

constexpr const char* absent = "";
constexpr const char* too_long = "the number has more digits than a kitchen needs";
constexpr const char* over_zero = "nothing can be divided by 0";
constexpr const char* malformed = "expected a number such as 2, 2.5, ½ or 1 1/2";

bool starts_with(std::string_view text, std::size_t at, std::string_view word) {
    return at <= text.size() && text.substr(at).starts_with(word);
}

struct Digits {
    std::int64_t value = 0;
    std::size_t end = 0;
};

Result<Digits, TextFault> read_digits(std::string_view text, std::size_t at, std::size_t most) {
    Digits digits{0, at};
    while (is_digit_at(text, digits.end)) {
        if (digits.end - at == most) {
            return fault_at(at, too_long);
        }
        digits.value = digits.value * 10 + (text[digits.end] - '0');
        ++digits.end;
    }
    if (digits.end == at) {
        return fault_at(at, absent);
    }
    return digits;
}

struct Vulgar {
    std::string_view text;
    Amount amount;
};

/// The vulgar fractions of Unicode (The Unicode Standard, Number Forms and Latin-1 Supplement).
constexpr Vulgar vulgar_fractions[] = {
    {"½", {1, 2}}, {"⅓", {1, 3}}, {"⅔", {2, 3}}, {"¼", {1, 4}}, {"¾", {3, 4}}, {"⅕", {1, 5}},
    {"⅖", {2, 5}}, {"⅗", {3, 5}}, {"⅘", {4, 5}}, {"⅙", {1, 6}}, {"⅚", {5, 6}}, {"⅐", {1, 7}},
    {"⅛", {1, 8}}, {"⅜", {3, 8}}, {"⅝", {5, 8}}, {"⅞", {7, 8}}, {"⅑", {1, 9}}, {"⅒", {1, 10}}};

std::optional<ReadAmount> vulgar_at(std::string_view text, std::size_t at) {
    for (const auto& vulgar : vulgar_fractions) {
        if (starts_with(text, at, vulgar.text)) {
            return ReadAmount{vulgar.amount, at + vulgar.text.size()};
        }
    }
    return std::nullopt;
}

/// The bytes of the stroke between numerator and denominator: "/" or the fraction slash U+2044.
std::size_t stroke_at(std::string_view text, std::size_t at) {
    constexpr std::string_view fraction_slash = "\u2044";
    return starts_with(text, at, "/")              ? 1
           : starts_with(text, at, fraction_slash) ? fraction_slash.size()
                                                   : 0;
}

/// Goes on with "/2" after a numerator.
Read divided(std::string_view text, const Digits& numerator) {
    const auto stroke = stroke_at(text, numerator.end);
    const auto under = read_digits(text, numerator.end + stroke, most_denominator_digits);
    if (!under) {
        const auto& why = under.fault();
        return fault_at(why.offset, is_absent(why) ? malformed : why.message);
    }
    if (under.value().value == 0) {
        return fault_at(numerator.end, over_zero);
    }
    return ReadAmount{in_lowest_terms({numerator.value, under.value().value}), under.value().end};
}

/// "1,000" and "1.000" stand for 1 or for 1000, but not "0,125" or "1.250".
bool is_ambiguous(std::string_view text, const Digits& whole, std::string_view decimals) {
    const bool grouped = whole.value > 0 && whole.value < 1000 && decimals.size() == 3;
    return grouped && (text[whole.end] == ',' || decimals == "000");
}

/// "1,500" is 1.5 to some and 1500 to others: both, as they are written without doubt.
std::string both_readings(std::int64_t whole, std::string_view decimals, char mark) {
    const std::string_view mark_name = mark == ',' ? "comma" : "point";
    const auto needed = decimals.find_last_not_of('0') + 1; // 0 where there is none
    if (needed == 0) {
        return fmt::format("it may mean {0} or {0}{1}: write one of them without a {2}", whole,
                           decimals, mark_name);
    }
    if (needed < decimals.size()) {
        return fmt::format("it may mean {0}{1}{2} or {0}{3}: write one of them", whole, mark,
                           decimals.substr(0, needed), decimals);
    }
    return fmt::format(
        "it may mean {0}{1}{2} or {0}{2}: write {0}{2}, or fewer digits after the {3}", whole, mark,
        decimals, mark_name);
}

/// Goes on with ".2" or ",25" after a whole number.
Read with_decimals(std::string_view text, const Digits& whole) {
    const auto begin = whole.end + 1;
    const auto decimals = read_digits(text, begin, most_decimals);
    if (!decimals) {
        return Failure{decimals.fault()};
    }
    const auto [value, end] = decimals.value();
    if (const auto group = text.substr(begin, end - begin); is_ambiguous(text, whole, group)) {
        return fault_at(whole.end, both_readings(whole.value, group, text[whole.end]));
    }
    std::int64_t scale = 1;
    for (std::size_t i = begin; i < end; ++i) {
        scale *= 10;
    }
    return ReadAmount{in_lowest_terms({whole.value * scale + value, scale}), end};
}

/// The fraction that goes on from a whole number, as in "1½" and "1 1/2"; Absent where none does.
Read fraction_after(std::string_view text, std::size_t end) {
    const auto at = skip_spaces(text, end);
    if (const auto vulgar = vulgar_at(text, at)) {
        return *vulgar;
    }
    const auto numerator = read_digits(text, at, most_denominator_digits);
    if (!numerator || stroke_at(text, numerator.value().end) == 0) {
        return fault_at(at, absent);
    }
    auto fraction = divided(text, numerator.value());
    if (fraction && fraction.value().amount.value() >= 1.0) {
        return fault_at(at, malformed);
    }
    return fraction;
}

Read with_fraction(std::string_view text, const Digits& whole) {
    const auto fraction = fraction_after(text, whole.end);
    if (!fraction) {
        const bool plain = is_absent(fraction.fault());
        return plain ? Read{ReadAmount{{whole.value, 1}, whole.end}} : fraction;
    }
    const auto& [part, end] = fraction.value();
    return ReadAmount{
        in_lowest_terms({whole.value * part.denominator + part.numerator, part.denominator}), end};
}

Read read_number(std::string_view text, std::size_t at) {
    if (const auto vulgar = vulgar_at(text, at)) {
        return *vulgar;
    }
    const auto whole = read_digits(text, at, most_digits);
    if (!whole) {
        return Failure{whole.fault()};
    }
    const auto end = whole.value().end;
    if (stroke_at(text, end) > 0) {
        return divided(text, whole.value());
    }
    const bool point = starts_with(text, end, ".") || starts_with(text, end, ",");
    if (point && is_digit_at(text, end + 1)) {
        return with_decimals(text, whole.value());
    }
    return with_fraction(text, whole.value());
}

/// Whether the text goes on like a number where one has just ended.
bool goes_on(std::string_view text, std::size_t end) {
    const bool point = starts_with(text, end, ".") || starts_with(text, end, ",");
    return is_digit_at(text, end + (point ? 1 : 0)) || stroke_at(text, end) > 0 ||
           vulgar_at(text, end).has_value();
}

/// Whether two numbers with a hyphen between them are a whole number and its fraction, "1-1/2".
bool is_mixed(const Amount& whole, const Amount& part) {
    return whole.denominator == 1 && whole.numerator > 0 && part.numerator < part.denominator;
}

} // namespace

std::string_view opening(std::span<const std::string_view> phrases, std::string_view small) {
    const auto found = std::ranges::find_if(phrases, [small](std::string_view phrase) {
        return small.starts_with(phrase) && space_at(small, phrase.size()) > 0;
    });
    return found == phrases.end() ? std::string_view{} : *found;
}

std::size_t space_at(std::string_view text, std::size_t at) {
    constexpr std::string_view spaces[] = {" ", "\u00A0", "\u202F"};
    for (const auto space : spaces) {
        if (starts_with(text, at, space)) {
            return space.size();
        }
    }
    return 0;
}

std::size_t skip_spaces(std::string_view text, std::size_t at) {
    while (const auto width = space_at(text, at)) {
        at += width;
    }
    return at;
}

std::size_t range_mark(std::string_view text, std::size_t at) {
    for (const std::string_view mark : {"-", "–", "—", "to ", "or "}) {
        if (starts_with(text, at, mark)) {
            return mark.size();
        }
    }
    return 0;
}

std::optional<TextFault> thousands_in_doubt(std::string_view text) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        const auto whole = read_digits(text, at, most_digits);
        if (!whole) {
            continue;
        }
        const auto end = whole.value().end;
        const auto decimals = read_digits(text, end + 1, most_decimals);
        const bool point = starts_with(text, end, ".") || starts_with(text, end, ",");
        if (point && decimals && whole.value().value > 0 && end - at <= 3 &&
            decimals.value().end - (end + 1) == 3) {
            return TextFault{
                end, both_readings(whole.value().value, text.substr(end + 1, 3), text[end])};
        }
        at = decimals && point ? decimals.value().end : end;
    }
    return std::nullopt;
}

Read read_amount(std::string_view text, std::size_t at) {
    auto number = read_number(text, at);
    if (number && goes_on(text, number.value().end)) {
        return fault_at(at, malformed);
    }
    return number;
}

Result<ReadRange, TextFault> read_range(std::string_view text, std::size_t at) {
    const auto low = read_amount(text, at);
    if (!low) {
        return Failure{low.fault()};
    }
    const auto& [amount, end] = low.value();
    const auto mark_at = skip_spaces(text, end);
    const auto mark = range_mark(text, mark_at);
    if (mark == 0) {
        return ReadRange{amount, amount, end};
    }
    const auto high = read_amount(text, skip_spaces(text, mark_at + mark));
    if (high) {
        const auto& [second, high_end] = high.value();
        const bool closed_up = mark_at == end && space_at(text, mark_at + mark) == 0;
        if (closed_up && text[mark_at] == '-' && is_mixed(amount, second)) {
            const Amount mixed{amount.numerator * second.denominator + second.numerator,
                               second.denominator};
            return ReadRange{mixed, mixed, high_end};
        }
        return ReadRange{amount, second, high_end};
    }
    if (is_absent(high.fault())) {
        return ReadRange{amount, amount, end};
    }
    return Failure{high.fault()};
}

} // namespace thawslip::kitchen
