// Why a word without quotes is no value, and what to write instead.

#include "base/printable.h"
#include "toml/moment.h"
#include "toml/scalar.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

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
    if (holds_only(word, "0123456789./") && word.size() > 5) {
        return "a date is year-month-day, such as 2026-10-17";
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
