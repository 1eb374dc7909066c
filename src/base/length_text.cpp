#include "base/length_text.h"

#include "base/letters.h"
#include "base/printable.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <fmt/format.h>
#include <optional>

namespace thawslip {
namespace {

constexpr std::string_view expected = "expected a number and a unit, such as \"100 mm\", \"4 in\"";

struct LengthUnit {
    std::string_view word;
    double points;
    double divisor = 1.0; ///< of `points`: divided last, as Length does, so that both agree
};

/// 1 in = 25.4 mm exactly (NIST Handbook 44, appendix C); 1 pt = 1/72 in (ISO 32000-1, 8.3.2.3).
constexpr std::array units{
    LengthUnit{"mm", 72.0, 25.4}, LengthUnit{"cm", 720.0, 25.4}, LengthUnit{"in", 72.0},
    LengthUnit{"inch", 72.0},     LengthUnit{"inches", 72.0},    LengthUnit{"\"", 72.0},
    LengthUnit{"pt", 1.0},        LengthUnit{"points", 1.0},     LengthUnit{"m", 72000.0, 25.4}};

class LengthReader {
public:
    explicit LengthReader(std::string_view text) : text_{text} {}

    Result<Length, LengthFault> read() {
        skip_spaces();
        const bool negative = take("-") || take("−");
        const auto number_at = at_;
        const auto number = mixed_number();
        if (!number) {
            return fault(number_at,
                         in_quotes(text_) + " is not a length: " + std::string{expected});
        }
        skip_spaces();
        const auto unit_at = at_;
        const auto unit = find_unit(rest());
        if (unit == units.end()) {
            return fault(unit_at, unit_message());
        }
        const double points = *number * unit->points / unit->divisor;
        constexpr double most = 10 * 72000.0 / 25.4;
        if (!std::isfinite(points) || points > most) {
            return fault(number_at, in_quotes(text_) + " is over 10 m: no such length is printed");
        }
        return Length::points(negative ? -points : points);
    }

private:
    static Failure<LengthFault> fault(std::size_t offset, std::string message) {
        return Failure{LengthFault{offset, std::move(message)}};
    }

    static const LengthUnit* find_unit(std::string_view word) {
        return std::ranges::find(units, word, &LengthUnit::word);
    }

    std::string unit_message() const {
        const auto word = rest();
        return word.empty() ? in_quotes(text_) + " lacks a unit: mm, cm, in or pt"
                            : in_quotes(word) + " is no unit of length: expected mm, cm, in or pt";
    }

    std::string_view rest() const {
        auto word = text_.substr(at_);
        while (!word.empty() && word.back() == ' ') {
            word.remove_suffix(1);
        }
        return word;
    }

    void skip_spaces() {
        while (take(" ") || take("\u00A0")) {
        }
    }

    bool take(std::string_view word) {
        const bool there = text_.substr(at_, word.size()) == word;
        at_ += there ? word.size() : 0;
        return there;
    }

    /// "4", "2.5", "2,5", "5/8" or "2 5/8".
    std::optional<double> mixed_number() {
        auto whole = decimal();
        if (!whole) {
            return std::nullopt;
        }
        if (take("/")) {
            return divide(*whole);
        }
        const auto before = at_;
        skip_spaces();
        if (const auto numerator = decimal(); numerator && take("/")) {
            const auto part = divide(*numerator);
            return part ? std::optional{*whole + *part} : std::nullopt;
        }
        at_ = before;
        return whole;
    }

    std::optional<double> divide(double numerator) {
        const auto denominator = decimal();
        return denominator && *denominator > 0 ? std::optional{numerator / *denominator}
                                               : std::nullopt;
    }

    std::optional<double> decimal() {
        auto end = at_;
        while (is_digit_at(text_, end)) {
            ++end;
        }
        const bool whole = end > at_;
        if (end < text_.size() && (text_[end] == '.' || text_[end] == ',')) {
            ++end;
            while (is_digit_at(text_, end)) {
                ++end;
            }
        }
        std::string digits{text_.substr(at_, end - at_)};
        std::ranges::replace(digits, ',', '.');
        double number = 0;
        const auto read = std::from_chars(digits.data(), digits.data() + digits.size(), number);
        if (!whole || read.ec != std::errc{}) {
            return std::nullopt;
        }
        at_ = end;
        return number;
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

} // namespace

Result<Length, LengthFault> parse_length(std::string_view text) {
    return LengthReader{text}.read();
}

std::string millimetres_text(Length length) {
    return fmt::format("{:.4g} mm", length.in_millimetres());
}

} // namespace thawslip
