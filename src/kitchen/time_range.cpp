#include "kitchen/time_range.h"

#include "kitchen/number_text.h"
#include "kitchen/text.h"

#include <algorithm>
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

/// "45 min - 1 h": the length of the dash between two whole times; 0 where there is none.
std::size_t dash_at(std::string_view text, std::size_t at) {
    for (const std::string_view dash : {"-", "–", "to "}) {
        if (text.substr(at).starts_with(dash)) {
            return dash.size();
        }
    }
    return 0;
}

struct ReadTime {
    TimeRange time;
    std::size_t end = 0;
};

/// "7-9 h", or "1 h 30 min": numbers with their units, one after the other, added up.
Result<ReadTime, TextFault> read_sum(std::string_view text, std::size_t at) {
    ReadTime sum{{}, at};
    do {
        const auto range = read_range(text, sum.end);
        if (!range) {
            const auto& why = range.fault().message;
            return Failure{
                TextFault{range.fault().offset,
                          why.empty() ? "expected a time such as \"45 min\" or \"7-9 h\"" : why}};
        }
        const auto unit_at = skip_spaces(text, range.value().end);
        const auto unit = read_unit(text, unit_at);
        if (!unit) {
            return Failure{TextFault{unit_at, "expected h or min after the number"}};
        }
        sum.time.low += minutes_of(range.value().low, unit->minutes);
        sum.time.high += minutes_of(range.value().high, unit->minutes);
        sum.end = skip_spaces(text, unit->end);
    } while (sum.end < text.size() && dash_at(text, sum.end) == 0);
    return sum;
}

/// One sum, or two with a dash between them.
Result<TimeRange, TextFault> read_times(std::string_view text) {
    const auto first = read_sum(text, skip_spaces(text, 0));
    if (!first) {
        return Failure{first.fault()};
    }
    auto [time, end] = first.value();
    if (end == text.size()) {
        return time;
    }
    const auto second_at = skip_spaces(text, end + dash_at(text, end));
    const auto second = read_sum(text, second_at);
    if (!second) {
        return Failure{second.fault()};
    }
    const bool plain = time.low == time.high && second.value().time.low == second.value().time.high;
    if (!plain || second.value().end < text.size()) {
        return Failure{TextFault{end, "expected one range: the shortest and the longest time"}};
    }
    time.high = second.value().time.high;
    return time;
}

} // namespace

Result<TimeRange, TextFault> parse_time_range(std::string_view text) {
    constexpr auto longest = std::chrono::hours{72};
    const auto small = lower(text); // of the same length, so that offsets hold
    const auto time = read_times(small);
    if (!time) {
        return time;
    }
    if (time.value().low <= std::chrono::minutes{0} || time.value().high > longest) {
        return Failure{TextFault{0, "a time is above 0 and at most 72 h"}};
    }
    if (time.value().low > time.value().high) {
        return Failure{TextFault{0, "the shorter time comes first"}};
    }
    return time;
}

} // namespace thawslip::kitchen
