#include "code/lines.h"

#include "base/letters.h"
#include "code/message.h"

#include <algorithm>
#include <cstdlib>
#include <fmt/format.h>

namespace thawslip::code {
namespace {

bool whole_hours(std::chrono::minutes time) {
    return time.count() > 0 && time.count() % 60 == 0;
}

/// Takes ` H` or ` MIN` off the end of `text`: the minutes one of it stands for, or 0.
int take_unit(std::string_view& text) {
    for (const auto& [unit, minutes] : {std::pair{std::string_view{" H"}, 60}, {" MIN", 1}}) {
        if (text.ends_with(unit)) {
            text.remove_suffix(unit.size());
            return minutes;
        }
    }
    return 0;
}

} // namespace

std::string date_text(kitchen::Date date) {
    const auto month = static_cast<unsigned>(date.month());
    return fmt::format("{} {} {}", static_cast<unsigned>(date.day()), months.at(month - 1),
                       static_cast<int>(date.year()));
}

std::string duration_text(std::chrono::minutes time) {
    return time_text({time, time});
}

std::string time_text(const kitchen::TimeRange& time) {
    const bool hours = whole_hours(time.low) && whole_hours(time.high);
    const auto divisor = hours ? 60 : 1;
    const std::string low = std::to_string(time.low.count() / divisor);
    const std::string high = std::to_string(time.high.count() / divisor);
    const std::string_view unit = hours ? " H" : " MIN";
    if (time.low == time.high) {
        return fmt::format("{}{}", low, unit);
    }
    // Seven digits with a hyphen look like a number to dial.
    const std::string_view dash = low.size() + high.size() > 6 ? " TO " : "-";
    return fmt::format("{}{}{}{}", low, dash, high, unit);
}

std::string target_text(const Target& target) {
    const int size = std::abs(target.tenths);
    const std::string_view sign = target.tenths < 0 ? "-" : "";
    const char scale = target.scale == kitchen::TemperatureScale::Celsius ? 'C' : 'F';
    return size % 10 == 0 ? fmt::format("{}{} {}", sign, size / 10, scale)
                          : fmt::format("{}{}.{} {}", sign, size / 10, size % 10, scale);
}

std::optional<int> whole_number(std::string_view text) {
    if (text.empty() || text.size() > 9 || !std::ranges::all_of(text, is_digit<char>)) {
        return std::nullopt;
    }
    int number = 0;
    for (const char digit : text) {
        number = number * 10 + (digit - '0');
    }
    return number;
}

std::optional<kitchen::Date> date_of(std::string_view text) {
    const std::size_t first = text.find(' ');
    if (first == std::string_view::npos || text.size() < first + 6) {
        return std::nullopt;
    }
    const auto day = whole_number(text.substr(0, first));
    const auto month = std::ranges::find(months, text.substr(first + 1, 3));
    const auto year = whole_number(text.substr(first + 5));
    if (!day || *day > 31 || month == months.end() || text[first + 4] != ' ' || !year ||
        *year > 9999) {
        return std::nullopt;
    }
    const kitchen::Date date{std::chrono::year{*year},
                             std::chrono::month{static_cast<unsigned>(month - months.begin()) + 1},
                             std::chrono::day{static_cast<unsigned>(*day)}};
    return date.ok() ? std::optional{date} : std::nullopt;
}

std::optional<std::chrono::minutes> duration_of(std::string_view text) {
    const auto time = time_of(text);
    return time && time->low == time->high ? std::optional{time->low} : std::nullopt;
}

std::optional<kitchen::TimeRange> time_of(std::string_view text) {
    const int unit = take_unit(text);
    std::size_t dash = text.find('-');
    std::size_t width = 1;
    if (const std::size_t to = text.find(" TO "); to != std::string_view::npos) {
        dash = to;
        width = 4;
    }
    const bool is_range = dash != std::string_view::npos;
    const auto low = whole_number(text.substr(0, dash));
    const auto high = is_range ? whole_number(text.substr(dash + width)) : low;
    if (unit == 0 || !low || !high || *low > 99999 || *high > 99999) {
        return std::nullopt;
    }
    return kitchen::TimeRange{std::chrono::minutes{*low * unit},
                              std::chrono::minutes{*high * unit}};
}

std::optional<Target> target_of(std::string_view text) {
    Target target;
    if (text.ends_with(" F")) {
        target.scale = kitchen::TemperatureScale::Fahrenheit;
    } else if (!text.ends_with(" C")) {
        return std::nullopt;
    }
    text.remove_suffix(2);
    const bool negative = text.starts_with('-');
    text.remove_prefix(negative ? 1 : 0);
    const std::size_t point = text.find('.');
    const auto whole = whole_number(text.substr(0, point));
    const auto tenths =
        point == std::string_view::npos ? std::optional{0} : whole_number(text.substr(point + 1));
    if (!whole || !tenths || *whole > 9999 || *tenths > 9) {
        return std::nullopt;
    }
    const int size = *whole * 10 + *tenths;
    target.tenths = negative ? -size : size;
    return target;
}

} // namespace thawslip::code
