// Why a word without quotes is no value, and what to write instead.

#include "base/letters.h"
#include "base/printable.h"
#include "toml/moment.h"
#include "toml/scalar.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <iterator>
#include <string>
#include <vector>

namespace thawslip::toml {
namespace {

bool holds_only(std::string_view word, std::string_view characters) {
    return !word.empty() && word.find_first_not_of(characters) == std::string_view::npos;
}

std::string no_such_day(std::string_view word, Date date) {
    if (!date.month().ok()) {
        return fmt::format("there is no {} in the calendar: months go from 01 to 12", word);
    }
    const auto last =
        std::chrono::year_month_day_last{date.year(), date.month() / std::chrono::last};
    return fmt::format("there is no {} in the calendar: this month has the days 01 to {}", word,
                       static_cast<unsigned>(last.day()));
}

/// A word that was meant as a date or a time.
std::optional<WordFault> moment_fault(std::string_view word) {
    auto time = word;
    if (const auto date = take_date(time); date && !date->ok()) {
        return WordFault{no_such_day(word.substr(0, 10), *date)};
    }
    time.remove_prefix(time.size() < word.size() && !time.empty() ? 1 : 0);
    const bool like_time = begins_like(time, "dd:dd") && holds_only(time, "0123456789:.+-Zz");
    if (like_time && begins_like(time, "dd:dd:dd")) {
        return WordFault{fmt::format("there is no time {}: hours go from 00 to 23, minutes and "
                                     "seconds from 00 to 59",
                                     in_quotes(word))};
    }
    if (like_time) {
        return WordFault{in_quotes(word) + " is not a time of TOML 1.0",
                         "TOML 1.1 lets the seconds be left out; here add them, such as 07:30:00"};
    }
    if (begins_like(word, "dddd-") && holds_only(word, "0123456789-")) {
        return WordFault{in_quotes(word) + " is not a date",
                         "a date is year-month-day with two digits each, such as 2026-01-07"};
    }
    return std::nullopt;
}

/// The parts of "3 Oct 2026", "03-10-2026", "3 de octubre de 2026", without the little words.
std::vector<std::string> date_parts(std::string_view word) {
    constexpr std::array little{"de", "of", "the", "del", "st", "nd", "rd", "th"};
    std::vector<std::string> parts;
    bool in_digits = false;
    bool apart = true;
    for (const char c : word) {
        const bool parts_them = std::string_view{" -./,"}.find(c) != std::string_view::npos;
        if (!parts_them && (apart || is_digit(c) != in_digits)) {
            parts.emplace_back();
        }
        if (!parts_them) {
            parts.back() += to_lower(c);
        }
        apart = parts_them;
        in_digits = is_digit(c);
    }
    std::erase_if(parts, [&](const std::string& part) {
        return std::ranges::find(little, part) != little.end();
    });
    return parts;
}

/// The number of a month by its name in English, Spanish or German, or the name's beginning; 0 for
/// any other word.
int month_named(std::string_view word) {
    struct Named {
        std::string_view beginning;
        int month;
    };
    constexpr Named months[] = {{"jan", 1},  {"ene", 1},  {"jän", 1},  {"feb", 2},  {"mar", 3},
                                {"mär", 3},  {"mrz", 3},  {"apr", 4},  {"abr", 4},  {"may", 5},
                                {"mai", 5},  {"jun", 6},  {"jul", 7},  {"aug", 8},  {"ago", 8},
                                {"sep", 9},  {"oct", 10}, {"okt", 10}, {"nov", 11}, {"dec", 12},
                                {"dic", 12}, {"dez", 12}};
    const auto found = std::ranges::find_if(
        months, [word](const Named& named) { return word.starts_with(named.beginning); });
    return found == std::end(months) ? 0 : found->month;
}

bool is_of_digits(std::string_view word, std::size_t most) {
    return holds_only(word, "0123456789") && word.size() <= most;
}

/// `2026-10-03` of a day whose month is named; nothing where it is not, or nobody can tell the year
/// from the day.
std::optional<std::string> named_date(const std::vector<std::string>& parts) {
    std::string year;
    std::string day;
    int month = 0;
    for (const auto& part : parts) {
        if (is_of_digits(part, 4)) {
            (part.size() == 4 ? year : day) = part;
        } else {
            month = month_named(part);
        }
    }
    if (parts.size() != 3 || year.empty() || day.empty() || day.size() > 2 || month == 0) {
        return std::nullopt;
    }
    return fmt::format("{}-{:02}-{:0>2}", year, month, day);
}

/// "03-10-2026": in one country the third of October, in another the tenth of March.
bool is_date_of_digits(const std::vector<std::string>& parts) {
    return parts.size() == 3 && is_of_digits(parts[0], 4) && is_of_digits(parts[1], 2) &&
           is_of_digits(parts[2], 4);
}

/// How a date is written that was meant as one; empty where none was.
std::string date_hint(std::string_view word, std::string_view key) {
    constexpr std::size_t shortest = 6; // 1.1.26; but 1.2.3 is no date
    const auto parts = date_parts(word);
    if (const auto date = named_date(parts)) {
        return "a date is year-month-day: " + (key.empty() ? "" : std::string{key} + " = ") + *date;
    }
    const bool of_digits = word.size() >= shortest && is_digit(word.front()) &&
                           (holds_only(word, "0123456789./") ||
                            (holds_only(word, "0123456789./-") && is_date_of_digits(parts)));
    return of_digits ? "a date is year-month-day, such as 2026-10-17" : "";
}

bool begins_with_curly_quote(std::string_view word) {
    constexpr std::array curly{"“", "”", "„", "‘", "’", "«"};
    return std::ranges::any_of(curly, [word](const char* each) { return word.starts_with(each); });
}

std::string value_hint(std::string_view word, std::string_view key) {
    if (begins_with_curly_quote(word)) {
        return "use the straight quotes \" and \" of the keyboard";
    }
    if (word == "True" || word == "False" || word == "TRUE" || word == "FALSE") {
        return "write true or false in lower case";
    }
    if (holds_only(word, "0123456789")) {
        return word.front() == '0' ? "a number has no zeros in front"
                                   : "a whole number has at most 18 digits";
    }
    if (auto hint = date_hint(word, key); !hint.empty()) {
        return hint;
    }
    if (holds_only(word, "0123456789.")) {
        return "a number has digits before and after its point";
    }
    if (word.back() == ',') {
        return "a line ends without a comma";
    }
    if (word.find('=') != std::string_view::npos) {
        return "each key stands on a line of its own";
    }
    if (word.find_first_of("\"[{") != std::string_view::npos || word.front() == '\'') {
        return {};
    }
    return "text stands in double quotes: " + (key.empty() ? "" : std::string{key} + " = ") +
           in_quotes(word);
}

} // namespace

WordFault explain_word(std::string_view word, std::string_view key) {
    return moment_fault(word).value_or(
        WordFault{in_quotes(word) + " is not a value of TOML", value_hint(word, key)});
}

} // namespace thawslip::toml
