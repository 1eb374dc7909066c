#include "kitchen/measures/time_range.h"

#include "kitchen/measures/number_text.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <iterator>
#include <optional>

namespace thawslip::kitchen {
namespace {

struct TimeUnit {
    std::string_view word;
    std::int64_t minutes;
};

constexpr TimeUnit time_units[] = {{"minutes", 1},
                                   {"minute", 1},
                                   {"mins", 1},
                                   {"min", 1},
                                   {"m", 1},
                                   {"hours", 60},
                                   {"hour", 60},
                                   {"hrs", 60},
                                   {"hr", 60},
                                   {"h", 60},
                                   // As cooks write them in German and Spanish.
                                   {"minuten", 1},
                                   {"stunden", 60},
                                   {"stunde", 60},
                                   {"std", 60},
                                   {"minutos", 1},
                                   {"minuto", 1},
                                   {"horas", 60},
                                   {"hora", 60}};

struct ReadUnit {
    std::int64_t minutes = 0;
    std::size_t end = 0;
};

/// The unit whose letters stand at `at`, with or without the full stop of an abbreviation.
std::optional<ReadUnit> read_unit(std::string_view text, std::size_t at) {
    auto end = at;
    while (end < text.size() && is_latin_letter(text[end])) {
        ++end;
    }
    const auto* unit =
        std::ranges::find(time_units, lower(text.substr(at, end - at)), &TimeUnit::word);
    if (unit == std::end(time_units)) {
        return std::nullopt;
    }
    return ReadUnit{unit->minutes, end + (text.substr(end).starts_with('.') ? 1 : 0)};
}

std::optional<std::chrono::minutes> whole_minutes(const Amount& amount, std::int64_t per_unit) {
    const auto product = amount.numerator * per_unit; // six digits by 60: far from overflow
    return product % amount.denominator == 0
               ? std::optional{std::chrono::minutes{product / amount.denominator}}
               : std::nullopt;
}

struct TimePart {
    TimeRange time;
    std::int64_t unit_minutes = 0;
    std::size_t end = 0;
};

/// One number or range with its unit: "7-9 h".
Result<TimePart, TextFault> read_part(std::string_view text, std::size_t at) {
    const auto range = read_range(text, at);
    if (!range) {
        const auto& why = range.fault();
        return is_absent(why) ? fault_at(at, "expected a time such as \"45 min\" or \"7-9 h\"")
                              : Failure{why};
    }
    const auto unit_at = skip_spaces(text, range.value().end);
    const auto unit = read_unit(text, unit_at);
    if (!unit) {
        return fault_at(unit_at, "expected h or min after the number");
    }
    const auto low = whole_minutes(range.value().low, unit->minutes);
    const auto high = whole_minutes(range.value().high, unit->minutes);
    if (!low || !high) {
        return fault_at(at, "expected a whole number of minutes");
    }
    return TimePart{{*low, *high}, unit->minutes, unit->end};
}

/// "1 h 30 min": hours, then minutes. Ends before anything that is no digit.
Result<TimePart, TextFault> read_sum(std::string_view text, std::size_t at) {
    auto sum = read_part(text, at);
    if (!sum || sum.value().unit_minutes == 1) {
        return sum;
    }
    const auto next = skip_spaces(text, sum.value().end);
    if (next == text.size() || range_mark(text, next) > 0) {
        return sum;
    }
    auto minutes = read_part(text, next);
    if (!minutes) {
        return minutes;
    }
    if (minutes.value().unit_minutes != 1) {
        return fault_at(next, "expected minutes after the hours");
    }
    const auto& [hours, unit, end] = sum.value();
    return TimePart{{hours.low + minutes.value().time.low, hours.high + minutes.value().time.high},
                    1,
                    minutes.value().end};
}

/// "45 min-1 h": both ends of a range with units of their own.
Result<TimePart, TextFault> read_ends(std::string_view text, std::size_t at) {
    auto low = read_sum(text, at);
    if (!low) {
        return low;
    }
    const auto mark_at = skip_spaces(text, low.value().end);
    const auto mark = range_mark(text, mark_at);
    if (mark == 0) {
        return low;
    }
    const auto high_at = skip_spaces(text, mark_at + mark);
    auto high = read_sum(text, high_at);
    if (!high) {
        return high;
    }
    const auto is_range = [](const TimePart& part) { return part.time.low != part.time.high; };
    if (is_range(low.value()) || is_range(high.value())) {
        return fault_at(high_at, "expected one range, such as \"45 min-1 h\"");
    }
    return TimePart{{low.value().time.low, high.value().time.low}, 1, high.value().end};
}

} // namespace

Result<TimeRange, TextFault> parse_time_range(std::string_view text) {
    constexpr auto longest = std::chrono::hours{72};
    const auto start = skip_spaces(text, 0);
    const auto ends = read_ends(text, start);
    if (!ends) {
        return Failure{ends.fault()};
    }
    const auto& [time, unit, end] = ends.value();
    if (const auto rest = skip_spaces(text, end); rest < text.size()) {
        return fault_at(rest, "expected nothing after the time");
    }
    if (time.low <= std::chrono::minutes{0} || time.high > longest) {
        return fault_at(start, "a time is above 0 and at most 72 h");
    }
    if (time.low > time.high) {
        return fault_at(start, "the shorter time comes first");
    }
    return time;
}

} // namespace thawslip::kitchen
