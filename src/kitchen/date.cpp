#include "kitchen/date.h"

#include "base/letters.h"

#include <algorithm>
#include <charconv>
#include <fmt/format.h>

namespace thawslip::kitchen {

Date add_months(Date date, std::chrono::months months) {
    const auto moved = date + months;
    return moved.ok() ? moved : Date{moved.year() / moved.month() / std::chrono::last};
}

Date add_days(Date date, std::chrono::days days) {
    return std::chrono::sys_days{date} + days;
}

std::chrono::days days_between(Date from, Date to) {
    return std::chrono::sys_days{to} - std::chrono::sys_days{from};
}

std::string to_iso(Date date) {
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

std::optional<Date> parse_iso(std::string_view text) {
    constexpr std::string_view shape = "dddd-dd-dd";
    const auto fits = [](char c, char s) { return s == 'd' ? is_digit(c) : c == s; };
    if (!std::ranges::equal(text, shape, fits)) {
        return std::nullopt;
    }
    const auto number = [text](std::size_t from, std::size_t length) {
        int value = 0;
        std::from_chars(text.data() + from, text.data() + from + length, value);
        return value;
    };
    const Date date{std::chrono::year{number(0, 4)},
                    std::chrono::month{static_cast<unsigned>(number(5, 2))},
                    std::chrono::day{static_cast<unsigned>(number(8, 2))}};
    return date.ok() ? std::optional{date} : std::nullopt;
}

} // namespace thawslip::kitchen
