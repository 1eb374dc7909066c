#include "kitchen/time_range.h"

#include "kitchen/number_text.h"

#include <array>
#include <cmath>
#include <optional>

namespace thawslip::kitchen {
namespace {

struct TimeUnit {
    std::string_view word;
    int minutes;
};

/// Longer words first: "hours" must not be read as "h" and a rest.
constexpr std::array<TimeUnit, 10> time_units = {{{"minutes", 1},
                                                  {"minute", 1},
                                                  {"mins", 1},
                                                  {"min", 1},
                                                  {"hours", 60},
                                                  {"hour", 60},
                                                  {"hrs", 60},
                                                  {"hr", 60},
                                                  {"h", 60},
                                                  {"m", 1}}};

struct ReadUnit {
    int minutes = 0;
    std::size_t end = 0;
};

bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

std::optional<ReadUnit> read_unit(std::string_view text, std::size_t at) {
    for (const auto& unit : time_units) {
        const auto end = at + unit.word.size();
        if (text.substr(std::min(at, text.size())).starts_with(unit.word) &&
            (end == text.size() || !is_letter(text[end]))) {
            return ReadUnit{unit.minutes, end};
        }
    }
    return std::nullopt;
}

std::chrono::minutes minutes_of(const Amount& amount, int per_unit) {
    return std::chrono::minutes{std::llround(amount.value() * per_unit)};
}

} // namespace

Result<TimeRange, TextFault> parse_time_range(std::string_view text) {
    constexpr auto longest = std::chrono::hours{72};
    TimeRange total;
    std::size_t at = skip_spaces(text, 0);
    do {
        const auto range = read_range(text, at);
        if (!range) {
            return Failure{TextFault{at, "expected a time such as \"45 min\" or \"7-9 h\""}};
        }
        const auto unit_at = skip_spaces(text, range->end);
        const auto unit = read_unit(text, unit_at);
        if (!unit) {
            return Failure{TextFault{unit_at, "expected h or min after the number"}};
        }
        total.low += minutes_of(range->low, unit->minutes);
        total.high += minutes_of(range->high, unit->minutes);
        at = skip_spaces(text, unit->end);
    } while (at < text.size());
    if (total.low <= std::chrono::minutes{0} || total.high > longest) {
        return Failure{TextFault{0, "a time is above 0 and at most 72 h"}};
    }
    if (total.low > total.high) {
        return Failure{TextFault{0, "the shorter time comes first"}};
    }
    return total;
}

} // namespace thawslip::kitchen
