#include "toml/faults.h"
#include "toml/outline.h"
#include "toml/syntax_scene.h"
#include "toml/type_hints.h"

#include <array>
#include <charconv>
#include <chrono>
#include <fmt/format.h>

namespace thawslip::toml::syntax {
namespace {

constexpr std::string_view date_hint =
    "a date is year-month-day with two digits each, such as 2026-01-07";

bool ends_token(char c) {
    return std::string_view{" \t\r\n,]}#="}.find(c) != std::string_view::npos;
}

/// The stretch without blanks around the place where the parser noticed, or just before it.
Explanation token_at(const Scene& scene) {
    auto begin = std::min(scene.noticed, scene.text.size());
    while (begin > scene.line_start() && !ends_token(scene.text[begin - 1])) {
        --begin;
    }
    auto end = begin;
    while (end < scene.text.size() && !ends_token(scene.text[end])) {
        ++end;
    }
    return {begin, end, {}};
}

/// `2026-02-30` in shape: whether there is such a day is another question.
std::optional<std::chrono::year_month_day> date_shaped(std::string_view word) {
    constexpr std::string_view shape = "dddd-dd-dd";
    int year = 0;
    unsigned month = 0;
    unsigned day = 0;
    for (std::size_t i = 0; i < shape.size(); ++i) {
        const bool digit = i < word.size() && word[i] >= '0' && word[i] <= '9';
        if (i >= word.size() || (shape[i] == 'd' ? !digit : word[i] != shape[i])) {
            return std::nullopt;
        }
    }
    std::from_chars(word.data(), word.data() + 4, year);
    std::from_chars(word.data() + 5, word.data() + 7, month);
    std::from_chars(word.data() + 8, word.data() + 10, day);
    return std::chrono::year{year} / std::chrono::month{month} / std::chrono::day{day};
}

std::string no_such_day(std::string_view word, std::chrono::year_month_day date) {
    if (!date.month().ok()) {
        return fmt::format("there is no {} in the calendar: months go from 01 to 12", word);
    }
    const auto last =
        std::chrono::year_month_day_last{date.year(), date.month() / std::chrono::last};
    return fmt::format("there is no {} in the calendar: this month has the days 01 to {}", word,
                       static_cast<unsigned>(last.day()));
}

/// The quote that ended a text just before the place where the parser noticed; else '\0'.
char quote_before(const Scene& scene) {
    auto before = scene.noticed;
    while (before > scene.line_start() && scene.text[before - 1] == ' ') {
        --before;
    }
    const char last = before > scene.line_start() ? scene.text[before - 1] : '\0';
    return last == '"' || last == '\'' ? last : '\0';
}

/// Whether a cook meant a date, and not "7-9 h", which a parser takes for the beginning of one.
bool begins_like_a_year(std::string_view word) {
    const auto digits = std::min(word.find_first_not_of("0123456789"), word.size());
    return digits == 4;
}

std::vector<std::string> value_hints(std::string_view key, std::string_view value) {
    const auto holds_only = [value](std::string_view characters) {
        return !value.empty() && value.find_first_not_of(characters) == std::string_view::npos;
    };
    constexpr std::array curly{"“", "”", "„", "‘", "’", "«"};
    for (const std::string_view quote : curly) {
        if (value.starts_with(quote)) {
            return {"use the straight quotes \" and \" of the keyboard"};
        }
    }
    if (value == "True" || value == "False" || value == "TRUE" || value == "FALSE") {
        return {"write true or false in small letters"};
    }
    if (holds_only("0123456789")) {
        return {value.front() == '0' ? "a number has no zeros in front"
                                     : "a whole number has at most 18 digits"};
    }
    if (holds_only("0123456789./") && value.size() > 5) {
        return {"a date is year-month-day, such as 2026-10-17"};
    }
    if (holds_only("0123456789.")) {
        return {"a number has digits before and after its point"};
    }
    if (value.empty()) {
        return {fmt::format("write {} = and a value, or remove the line", key)};
    }
    if (value.back() == ',') {
        return {"a line ends without a comma"};
    }
    if (value.find('=') != std::string_view::npos) {
        return {"each key stands on a line of its own"};
    }
    if (value.find_first_of("\"'[{") != std::string_view::npos) {
        return {};
    }
    return {fmt::format("text stands in double quotes: {} = {}", key, in_quotes(value))};
}

Found time_fault(const Scene& scene, Explanation place, std::string_view word) {
    if (scene.says("between")) {
        place.message = fmt::format("there is no time {}: hours go from 00 to 23, minutes and "
                                    "seconds from 00 to 59",
                                    in_quotes(word));
        return place;
    }
    place.message = in_quotes(word) + " is not a time of TOML 1.0";
    place.hints = {"TOML 1.1 lets the seconds be left out; here add them, such as 07:30:00"};
    return place;
}

} // namespace

Found date_fault(const Scene& scene) {
    const bool date = scene.says("parsing date");
    if (!date && !scene.says("parsing time")) {
        return std::nullopt;
    }
    auto place = token_at(scene);
    const auto word = scene.text.substr(place.begin, place.end - place.begin);
    if (const auto day = date_shaped(word); day && !day->ok()) {
        place.message = no_such_day(word.substr(0, 10), *day);
        return place;
    }
    if (!date || word.find(':') != std::string_view::npos) {
        return time_fault(scene, std::move(place), word);
    }
    if (!begins_like_a_year(word)) {
        return std::nullopt;
    }
    place.message = in_quotes(word) + " is not a date";
    place.hints = {std::string{date_hint}};
    return place;
}

Found inline_table_fault(const Scene& scene) {
    if (!scene.says("parsing inline table")) {
        return std::nullopt;
    }
    const char c = scene.at(scene.noticed);
    const bool broken = c == '\n' || c == '\r';
    if (!broken && !scene.says("dangling comma")) {
        return std::nullopt;
    }
    // The comma at the end is the culprit, not the brace after it.
    const auto begin =
        broken ? scene.noticed : std::min(scene.text.rfind(',', scene.noticed), scene.noticed);
    return Explanation{begin,
                       begin + 1,
                       broken ? "a table in braces must be written in one line"
                              : "a table in braces must not end with a comma",
                       {"TOML 1.1 allows it, TOML 1.0 does not"}};
}

Found trailing_fault(const Scene& scene) {
    if (!scene.says("expected a comment or whitespace")) {
        return std::nullopt;
    }
    const auto rest = trimmed(scene.text.substr(scene.noticed, scene.line_end() - scene.noticed));
    if (const char quote = quote_before(scene); quote != '\0' && rest != ",") {
        return Explanation{scene.noticed,
                           scene.noticed + rest.size(),
                           "the text has ended, but more follows in its line",
                           {quote == '"'
                                ? "a double quote inside a text is written \\\""
                                : "put a text that holds a single quote in double quotes"}};
    }
    Explanation found{scene.noticed, scene.noticed + rest.size(),
                      in_quotes(rest) + " stands where the line should end"};
    if (rest == ",") {
        found.hints = {"a line ends without a comma"};
    } else if (rest.front() != ']') {
        found.hints = {"several values stand in brackets with commas between; a remark begins with "
                       "#; each key has a line of its own"};
    }
    return found;
}

/// `key = what is no value`: text that lacks its quotes, most of the time.
Found value_fault(const Scene& scene) {
    const auto line = scene.line_start();
    const auto equals = scene.text.substr(0, scene.line_end()).find('=', line);
    if (equals == std::string_view::npos || equals > scene.noticed) {
        return std::nullopt;
    }
    const auto end = std::max(std::min(scene.text.find('#', equals), scene.line_end()), equals + 1);
    const auto value = trimmed(scene.text.substr(equals + 1, end - equals - 1));
    const auto key = trimmed(scene.text.substr(line, equals - line));
    if (key.empty()) {
        return Explanation{equals, equals + 1, "a key is missing before the =", {}};
    }
    if (!value.empty() && std::string_view{"\"'[{"}.find(value.front()) != std::string_view::npos) {
        return std::nullopt;
    }
    const auto begin =
        value.empty() ? equals + 1 : static_cast<std::size_t>(value.data() - scene.text.data());
    return Explanation{begin, begin + value.size(),
                       value.empty() ? in_quotes(key) + " has no value"
                                     : in_quotes(value) + " is not a value of TOML",
                       value_hints(printable(key), value)};
}

/// `["a" "b"]`
Found comma_fault(const Scene& scene) {
    const auto open = outline(scene.text, scene.noticed, scene.text.size()).open_brackets;
    if (!scene.says("expected comma") || open.empty() || scene.line_start() > open.back()) {
        return std::nullopt; // in a later line the bracket was more likely left open
    }
    const auto end =
        std::min(scene.text.find_first_of(",]}#\r\n", scene.noticed), scene.text.size());
    const auto entry = trimmed(scene.text.substr(scene.noticed, end - scene.noticed));
    if (entry.empty()) {
        return std::nullopt;
    }
    const bool has_quotes = entry.front() == '"' || entry.front() == '\'';
    return Explanation{scene.noticed, scene.noticed + entry.size(),
                       "a comma is missing before " +
                           (has_quotes ? printable(entry) : in_quotes(entry))};
}

/// Text without its quotes inside a list or a table in braces.
Found element_fault(const Scene& scene) {
    constexpr std::array guesses{"determine value type",  "expected 'true'", "expected 'false'",
                                 "expected 'nan'",        "expected 'inf'",  "4-digit year",
                                 "begin with underscores"};
    const bool is_guess =
        std::ranges::any_of(guesses, [&scene](const char* words) { return scene.says(words); });
    const auto open = outline(scene.text, scene.noticed, scene.text.size()).open_brackets;
    if (!is_guess || open.empty()) {
        return std::nullopt;
    }
    const auto from = scene.text.substr(0, scene.noticed).find_last_of("[,{=\n") + 1;
    const auto to =
        std::min(scene.text.find_first_of(",]}#\r\n", scene.noticed), scene.text.size());
    const auto value = trimmed(scene.text.substr(from, to - from));
    const auto begin =
        value.empty() ? scene.noticed : static_cast<std::size_t>(value.data() - scene.text.data());
    Explanation found{begin, begin + value.size(), in_quotes(value) + " is not a value of TOML"};
    found.hints = {value.find('=') == std::string_view::npos
                       ? "text stands in double quotes: " + in_quotes(value)
                       : opened_at(scene, open.back())};
    return found;
}

} // namespace thawslip::toml::syntax
