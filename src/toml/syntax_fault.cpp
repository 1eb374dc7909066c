#include "toml/syntax_fault.h"

#include "base/utf8.h"
#include "toml/faults.h"
#include "toml/outline.h"
#include "toml/type_hints.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <optional>

namespace thawslip::toml {
namespace {

/// What to say about a stretch of the text.
struct Explanation {
    std::size_t begin = 0;
    std::size_t end = 0;
    std::string message;
    std::vector<std::string> hints = {};
};

struct Scene {
    std::string_view text;
    std::size_t noticed = 0; ///< byte offset
    std::string_view description;

    bool says(std::string_view words) const {
        return description.find(words) != std::string_view::npos;
    }
    std::size_t line_start() const {
        const auto before = text.substr(0, noticed);
        return before.rfind('\n') + 1; // npos + 1 is 0
    }
    std::size_t line_end() const {
        return std::min(text.find_first_of("\r\n", noticed), text.size());
    }
    char at(std::size_t offset) const { return offset < text.size() ? text[offset] : '\n'; }
};

bool ends_token(char c) {
    return std::string_view{" \t\r\n,[]{}#="}.find(c) != std::string_view::npos;
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

std::string_view words_of(const Scene& scene, const Explanation& place) {
    return scene.text.substr(place.begin, place.end - place.begin);
}

/// The parser's words after `Error while parsing …: `.
std::string_view tail(std::string_view description) {
    const auto colon = description.find(": ");
    return colon == std::string_view::npos ? description : description.substr(colon + 2);
}

std::optional<Explanation> explain_escape(const Scene& scene) {
    if (scene.says("surrogates")) {
        const auto escape = std::min(scene.text.rfind('\\', scene.noticed), scene.noticed);
        return Explanation{escape,
                           scene.noticed,
                           quoted(scene.text.substr(escape, scene.noticed - escape)) +
                               " is half a character",
                           {"write the character itself"}};
    }
    if (!scene.says("escape sequence") || scene.noticed == 0) {
        return std::nullopt;
    }
    const auto begin = scene.noticed - 1;
    const char letter = scene.at(scene.noticed);
    if (letter == 'x' || letter == 'e') {
        return Explanation{begin,
                           scene.noticed + 1,
                           fmt::format("the escape \\{} is not part of TOML 1.0", letter),
                           {fmt::format("TOML 1.1 has it; here write {}",
                                        letter == 'e' ? "\\u001b" : "\\u00 and the two digits")}};
    }
    auto end = scene.noticed;
    if (end < scene.text.size()) {
        next_code_point(scene.text, end);
    }
    return Explanation{begin,
                       end,
                       quoted(scene.text.substr(begin, end - begin)) + " is no escape of TOML",
                       {"write a backslash twice, or the text in 'single quotes'"}};
}

std::optional<Explanation> explain_string(const Scene& scene) {
    const auto open = outline(scene.text, scene.noticed, scene.text.size()).open_string;
    const auto after =
        open ? open : outline(scene.text, scene.noticed + 1, scene.text.size()).open_string;
    if (!after || !scene.says("string")) {
        return std::nullopt;
    }
    const bool multi_line =
        scene.text.substr(*after, 3) == "\"\"\"" || scene.text.substr(*after, 3) == "'''";
    const char c = scene.at(scene.noticed);
    if (scene.says("end-of-file") || c == '\n' || c == '\r') {
        const auto quotes = scene.text.substr(*after, multi_line ? 3 : 1);
        const auto end = std::min(scene.text.find_first_of("\r\n", *after), scene.text.size());
        return Explanation{*after,
                           end,
                           "the text that begins here is not closed",
                           {fmt::format("put {} at its end", quotes)}};
    }
    return std::nullopt;
}

std::optional<Explanation> explain_control(const Scene& scene) {
    if (scene.noticed >= scene.text.size()) {
        return std::nullopt;
    }
    if (scene.noticed > 0 && scene.text[scene.noticed - 1] == '\r') {
        return Explanation{scene.noticed - 1,
                           scene.noticed,
                           "a carriage return alone ends no line in TOML",
                           {"save the file with line feeds, or with both, at the line ends"}};
    }
    auto end = scene.noticed;
    const auto c = next_code_point(scene.text, end);
    const bool control = (c < 0x20 && c != '\n' && c != '\r' && c != '\t') || c == 0x7F;
    if (!control) {
        return std::nullopt;
    }
    return Explanation{scene.noticed, end,
                       fmt::format("the control character {} is not allowed in TOML", name_of(c))};
}

std::optional<Explanation> explain_date(const Scene& scene) {
    const bool date = scene.says("parsing date");
    if (!date && !scene.says("parsing time")) {
        return std::nullopt;
    }
    auto place = token_at(scene);
    const auto written = quoted(words_of(scene, place));
    if (scene.says("between")) {
        place.message =
            fmt::format("there is no {} in the calendar: {}", written, tail(scene.description));
        if (!date) {
            place.message =
                fmt::format("there is no time {}: {}", written, tail(scene.description));
        }
    } else if (date) {
        place.message = written + " is not a date";
        place.hints = {"a date is year-month-day with two digits each, such as 2026-01-07"};
    } else {
        place.message = written + " is not a time of TOML 1.0";
        place.hints = {"TOML 1.1 lets the seconds be left out; here add them, such as 07:30:00"};
    }
    return place;
}

std::optional<Explanation> explain_inline_table(const Scene& scene) {
    if (!scene.says("parsing inline table")) {
        return std::nullopt;
    }
    const char c = scene.at(scene.noticed);
    const bool broken = c == '\n' || c == '\r';
    if (!broken && !scene.says("dangling comma")) {
        return std::nullopt;
    }
    // The comma at the end is the culprit, not the brace after it.
    auto begin = scene.noticed;
    if (!broken) {
        begin = std::min(scene.text.rfind(',', scene.noticed), scene.noticed);
    }
    return Explanation{begin,
                       begin + 1,
                       broken ? "a table in braces must be written in one line"
                              : "a table in braces must not end with a comma",
                       {"TOML 1.1 allows it, TOML 1.0 does not"}};
}

std::optional<Explanation> explain_header_twice(const Scene& scene, std::size_t begin) {
    const auto header = trimmed(scene.text.substr(begin, scene.line_end() - begin));
    const bool listed = header.substr(0, 2) == "[[";
    Explanation found{begin, begin + header.size(),
                      fmt::format("{} is already there as something else", printable(header))};
    if (!listed && scene.says("existing table")) {
        found.message = fmt::format("{} stands here a second time", printable(header));
        found.hints = {
            fmt::format("where there are several, each begins with [{}]", printable(header))};
    }
    return found;
}

std::optional<Explanation> explain_twice(const Scene& scene) {
    if (!scene.says("cannot redefine existing")) {
        return std::nullopt;
    }
    const auto line = scene.line_start();
    const auto first = scene.text.find_first_not_of(" \t", line);
    if (first != std::string_view::npos && scene.text[first] == '[') {
        return explain_header_twice(scene, first);
    }
    const auto equals = scene.text.rfind('=', scene.noticed);
    if (equals == std::string_view::npos || equals < line) {
        return std::nullopt;
    }
    const auto separator = scene.text.substr(0, equals).find_last_of("\n,{");
    const auto after = separator == std::string_view::npos ? 0 : separator + 1;
    const auto key = trimmed(scene.text.substr(after, equals - after));
    const auto begin = static_cast<std::size_t>(key.data() - scene.text.data());
    return Explanation{begin,
                       begin + key.size(),
                       fmt::format("{} is set a second time", quoted(key)),
                       {"one table holds each key once"}};
}

bool holds_only(std::string_view text, std::string_view characters) {
    return !text.empty() && text.find_first_not_of(characters) == std::string_view::npos;
}

bool is_separator(char c) {
    return c == '.' || c == '/';
}

std::vector<std::string> value_hints(std::string_view key, std::string_view value) {
    constexpr std::array curly{"“", "”", "„", "‘", "’", "«"};
    for (const std::string_view quote : curly) {
        if (value.substr(0, quote.size()) == quote) {
            return {"use the straight quotes \" and \" of the keyboard"};
        }
    }
    if (value == "True" || value == "False" || value == "TRUE" || value == "FALSE") {
        return {"write true or false in small letters"};
    }
    if (holds_only(value, "0123456789")) {
        return {value.front() == '0' ? "a number has no zeros in front"
                                     : "a whole number has at most 18 digits"};
    }
    if (holds_only(value, "0123456789./") && std::ranges::count_if(value, is_separator) > 1) {
        return {"a date is year-month-day, such as 2026-10-17"};
    }
    if (holds_only(value, "0123456789.,+-_eE")) {
        return {"a number is written such as 2.5, with digits on both sides of its point"};
    }
    if (value.empty()) {
        return {fmt::format("write {} = and a value, or remove the line", key)};
    }
    if (value.find_first_of("\"'[{") != std::string_view::npos) {
        return {};
    }
    return {fmt::format("text stands in double quotes: {} = {}", key, quoted(value))};
}

/// `key = what is no value`: text that lacks its quotes, most of the time.
std::optional<Explanation> explain_value(const Scene& scene) {
    const auto line = scene.line_start();
    const auto equals = scene.text.substr(0, scene.line_end()).find('=', line);
    if (equals == std::string_view::npos || equals > scene.noticed) {
        return std::nullopt;
    }
    const auto end = std::min(scene.text.find('#', equals), scene.line_end());
    const auto value = trimmed(scene.text.substr(equals + 1, end - equals - 1));
    const auto key = trimmed(scene.text.substr(line, equals - line));
    if (!value.empty() && std::string_view{"\"'[{"}.find(value.front()) != std::string_view::npos) {
        return std::nullopt;
    }
    const auto begin =
        value.empty() ? equals + 1 : static_cast<std::size_t>(value.data() - scene.text.data());
    return Explanation{begin, begin + value.size(),
                       value.empty() ? quoted(key) + " has no value"
                                     : quoted(value) + " is not a value of TOML",
                       value_hints(printable(key), value)};
}

/// The line on which the parser stopped, without blanks around it.
std::string_view line_of(const Scene& scene) {
    const auto begin = scene.line_start();
    return trimmed(scene.text.substr(begin, scene.line_end() - begin));
}

Explanation about(const Scene& scene, std::string_view part, std::string message,
                  std::vector<std::string> hints = {}) {
    const auto begin = static_cast<std::size_t>(part.data() - scene.text.data());
    return {begin, begin + part.size(), std::move(message), std::move(hints)};
}

std::optional<Explanation> explain_no_key(const Scene& scene) {
    const auto line = line_of(scene);
    if (line.starts_with('=')) {
        return about(scene, line, "there is no key before =");
    }
    if (!scene.says("expected '='")) {
        return std::nullopt;
    }
    return about(scene, line, quoted(line) + " is not \"key = value\"");
}

std::optional<Explanation> explain_header(const Scene& scene) {
    const auto line = line_of(scene);
    if (!scene.says("parsing table header") || !line.starts_with('[')) {
        return std::nullopt;
    }
    if (scene.at(scene.noticed) != ']' && scene.says("expected a comment")) {
        return Explanation{scene.noticed,
                           scene.line_end(),
                           "a table's header stands alone in its line",
                           {"begin a new line after the closing bracket"}};
    }
    if (scene.says("expected ']'") || scene.says("expected a comment")) {
        return about(scene, line, quoted(line) + " is not a table's header",
                     {"write [name] or, for one of several, [[name]]"});
    }
    return std::nullopt;
}

/// `"Tom's "best" stew"`: the quote in the middle ended the text.
std::optional<Explanation> explain_text_after_text(const Scene& scene) {
    auto before = scene.noticed;
    while (before > scene.line_start() && scene.text[before - 1] == ' ') {
        --before;
    }
    const char quote = before > scene.line_start() ? scene.text[before - 1] : '\n';
    if ((quote != '"' && quote != '\'') || !scene.says("expected a comment")) {
        return std::nullopt;
    }
    return Explanation{scene.noticed,
                       scene.line_end(),
                       "the text has ended, but more follows in its line",
                       {quote == '"' ? "a double quote inside a text is written \\\""
                                     : "put a text that holds a single quote in double quotes"}};
}

/// Inside brackets: an entry without its quotes, or without the comma before it.
std::optional<Explanation> explain_entry(const Scene& scene) {
    const auto open = outline(scene.text, scene.noticed, scene.text.size()).open_brackets;
    if (open.empty() || scene.text[open.back()] != '[' || scene.says("inline table")) {
        return std::nullopt;
    }
    const auto place = token_at(scene);
    const auto end = std::min(scene.text.find_first_of(",]#\r\n", place.begin), scene.text.size());
    const auto entry = trimmed(scene.text.substr(place.begin, end - place.begin));
    if (entry.empty() || scene.line_start() > open.back()) {
        return std::nullopt; // more likely a bracket that was never closed
    }
    if (scene.says("expected comma")) {
        return about(scene, entry, fmt::format("a comma is missing before {}", printable(entry)));
    }
    if (entry.find_first_of("\"'") != std::string_view::npos) {
        return std::nullopt;
    }
    return about(scene, entry, quoted(entry) + " is not a value of TOML",
                 {"text stands in double quotes: " + quoted(entry)});
}

/// The parser's own words, with the bracket that was never closed.
Explanation explain_rest(const Scene& scene) {
    Explanation found{scene.noticed, scene.noticed + 1, printable(tail(scene.description))};
    const auto open = outline(scene.text, scene.noticed, scene.text.size()).open_brackets;
    if (!open.empty()) {
        const auto where = position_of(scene.text, open.back());
        found.hints = {fmt::format("\"{}\" was opened at {}:{}", scene.text[open.back()],
                                   where.line, where.column)};
    }
    return found;
}

Explanation explain(const Scene& scene) {
    constexpr std::array explainers{
        explain_escape,       explain_string, explain_control, explain_date,
        explain_inline_table, explain_twice,  explain_header,  explain_text_after_text,
        explain_entry,        explain_no_key, explain_value};
    for (const auto& explainer : explainers) {
        if (auto found = explainer(scene)) {
            return *found;
        }
    }
    return explain_rest(scene);
}

} // namespace

Diagnostic explain_syntax(std::string_view text, const std::string& file,
                          const SyntaxError& error) {
    const auto noticed = offset_of(text, error.noticed);
    const auto found = explain({text, noticed, error.description});
    const auto begin = position_of(text, found.begin);
    const auto end = position_of(text, std::max(found.begin, found.end));
    const auto length = end.line == begin.line ? end.column - begin.column : 1;
    return {
        Severity::Error, {file, begin.line, begin.column, length}, {}, found.message, found.hints};
}

} // namespace thawslip::toml
