#include "toml/moment.h"

#include "base/letters.h"

#include <algorithm>

namespace thawslip::toml {
namespace {

/// The number that `count` digits from `at` on make.
int number_at(std::string_view word, std::size_t at, std::size_t count) {
    int number = 0;
    for (const char c : word.substr(at, count)) {
        number = number * 10 + (c - '0');
    }
    return number;
}

/// `07:30`, with its hours and minutes in range.
bool take_hour_and_minute(std::string_view& word) {
    if (!begins_like(word, "dd:dd") || number_at(word, 0, 2) > 23 || number_at(word, 3, 2) > 59) {
        return false;
    }
    word.remove_prefix(5);
    return true;
}

/// `:00` or `:00.25`
bool take_seconds(std::string_view& word) {
    if (!begins_like(word, ":dd") || number_at(word, 1, 2) > 59) {
        return false;
    }
    word.remove_prefix(3);
    if (begins_like(word, ".d")) {
        word.remove_prefix(1);
        word.remove_prefix(static_cast<std::size_t>(std::ranges::find_if_not(word, is_digit<char>) -
                                                    word.begin()));
    }
    return true;
}

/// `Z` or `-07:00`
bool take_offset(std::string_view& word) {
    const char sign = word.empty() ? '\0' : word.front();
    word.remove_prefix(word.empty() ? 0 : 1);
    return sign == 'Z' || sign == 'z' ||
           ((sign == '+' || sign == '-') && take_hour_and_minute(word));
}

} // namespace

bool begins_like(std::string_view word, std::string_view shape) {
    return word.size() >= shape.size() &&
           std::equal(shape.begin(), shape.end(), word.begin(), [](char wanted, char c) {
               return wanted == 'd' ? is_digit(c) : c == wanted;
           });
}

std::optional<Date> take_date(std::string_view& word) {
    if (!begins_like(word, "dddd-dd-dd")) {
        return std::nullopt;
    }
    const Date date{std::chrono::year{number_at(word, 0, 4)},
                    std::chrono::month{static_cast<unsigned>(number_at(word, 5, 2))},
                    std::chrono::day{static_cast<unsigned>(number_at(word, 8, 2))}};
    word.remove_prefix(10);
    return date;
}

std::optional<Content> moment_of(std::string_view word) {
    const auto date = take_date(word);
    if (date && (!date->ok() || word.empty())) {
        return date->ok() ? std::optional<Content>{*date} : std::nullopt;
    }
    if (date) {
        if (word.front() != ' ' && word.front() != 'T' && word.front() != 't') {
            return std::nullopt;
        }
        word.remove_prefix(1);
    }
    if (!take_hour_and_minute(word) || !take_seconds(word)) {
        return std::nullopt;
    }
    if (date && !word.empty() && !take_offset(word)) {
        return std::nullopt;
    }
    if (!word.empty()) {
        return std::nullopt;
    }
    return OtherTime{date ? "date with a time" : "time of day"};
}

} // namespace thawslip::toml
