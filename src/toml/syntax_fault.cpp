#include "toml/syntax_fault.h"

#include "base/utf8.h"
#include "toml/faults.h"
#include "toml/outline.h"
#include "toml/syntax_scene.h"
#include "toml/type_hints.h"

#include <array>
#include <fmt/format.h>

namespace thawslip::toml {
namespace {

using namespace syntax;

/// The parser's words after `Error while parsing …: `.
std::string_view tail(std::string_view description) {
    const auto colon = description.find(": ");
    return colon == std::string_view::npos ? description : description.substr(colon + 2);
}

/// The line in which the parser noticed, without blanks around it.
Explanation whole_line(const Scene& scene) {
    const auto start = scene.line_start();
    const auto line = trimmed(scene.text.substr(start, scene.line_end() - start));
    const auto begin =
        line.empty() ? start : static_cast<std::size_t>(line.data() - scene.text.data());
    return {begin, begin + line.size(), {}};
}

std::string_view words_of(const Scene& scene, const Explanation& place) {
    return scene.text.substr(place.begin, place.end - place.begin);
}

Explanation header_twice(const Scene& scene, Explanation place) {
    const auto header = printable(words_of(scene, place));
    if (header.starts_with("[[") || !scene.says("existing table")) {
        place.message = header + " is already there as something else";
        return place;
    }
    place.message = header + " stands here a second time";
    place.hints = {
        fmt::format("write all its keys below the first; where several may stand, each begins "
                    "with [{}]",
                    header)};
    return place;
}

Found twice_fault(const Scene& scene) {
    if (!scene.says("cannot redefine existing")) {
        return std::nullopt;
    }
    const auto line = whole_line(scene);
    if (scene.at(line.begin) == '[') {
        return header_twice(scene, line);
    }
    const auto equals = scene.text.rfind('=', scene.noticed);
    if (equals == std::string_view::npos || equals < line.begin) {
        return std::nullopt;
    }
    const auto separator = scene.text.substr(0, equals).find_last_of("\n,{");
    const auto after = separator == std::string_view::npos ? 0 : separator + 1;
    const auto key = trimmed(scene.text.substr(after, equals - after));
    const auto begin = static_cast<std::size_t>(key.data() - scene.text.data());
    return Explanation{begin,
                       begin + key.size(),
                       fmt::format("{} is set a second time", in_quotes(key)),
                       {"one table holds each key once"}};
}

/// A line that is neither a header nor `key = value`.
Found line_fault(const Scene& scene) {
    auto place = whole_line(scene);
    const auto line = words_of(scene, place);
    const bool no_equals =
        scene.says("parsing key-value pair") &&
        (scene.says("expected '='") || (scene.says("end-of-file") && line.find('=') == line.npos));
    const bool odd_letter = scene.says("expected keys, tables, whitespace or comments") &&
                            !line.empty() && line.front() != '=';
    if (!no_equals && !odd_letter) {
        return std::nullopt;
    }
    place.message = in_quotes(line) + " is not key = value";
    if (odd_letter) {
        place.hints = {"a key is made of letters A to Z, digits, - and _; any other stands in "
                       "double quotes"};
    }
    return place;
}

/// A header that adds to a table in braces; the parser notices it a line later.
Found closed_table_fault(const Scene& scene) {
    if (!scene.says("into existing inline table")) {
        return std::nullopt;
    }
    const auto header = scene.text.substr(0, scene.noticed).rfind("\n[") + 1; // npos + 1 is 0
    auto place = whole_line({scene.text, header, scene.description});
    place.message =
        printable(words_of(scene, place)) + " adds to a table that is written in braces";
    place.hints = {"write all its keys inside the braces, or none there"};
    return place;
}

/// A header that is not closed, or shares its line.
Found header_fault(const Scene& scene) {
    auto place = whole_line(scene);
    const auto line = words_of(scene, place);
    if (!scene.says("parsing table header") || !line.starts_with('[')) {
        return std::nullopt;
    }
    if (scene.says("expected a comment") && scene.at(scene.noticed) != ']') {
        return Explanation{scene.noticed,
                           scene.line_end(),
                           "a table's header stands alone in its line",
                           {"begin a new line after the closing bracket"}};
    }
    const bool open = scene.says("expected ']'") || scene.says("end-of-file");
    if (!open && !scene.says("expected a comment")) {
        return std::nullopt;
    }
    place.message = in_quotes(line) + " is not a table's header";
    place.hints = {"write [name] or, for one of several, [[name]]"};
    return place;
}

/// `[`, `[a.]`, `a..b`: a name is missing in a header or a key.
Found name_fault(const Scene& scene) {
    const bool blank = scene.says("blank bare keys");
    if (!blank && !scene.says("expected bare key starting character")) {
        return std::nullopt;
    }
    auto end = scene.noticed;
    std::string found = "the line ends";
    if (end < scene.line_end()) {
        next_code_point(scene.text, end);
        found = in_quotes(scene.text.substr(scene.noticed, end - scene.noticed)) + " stands";
    }
    return Explanation{scene.noticed, end, found + " where a name was expected"};
}

/// The parser's own words, with the bracket that was never closed.
Explanation any_fault(const Scene& scene) {
    const auto open = outline(scene.text, scene.noticed, scene.text.size()).open_brackets;
    if (!open.empty() && scene.says("end-of-file")) {
        return {open.back(), open.back() + 1, "the bracket that begins here is not closed"};
    }
    Explanation found{scene.noticed, scene.noticed + 1, printable(tail(scene.description))};
    if (!open.empty()) {
        found.hints = {opened_at(scene, open.back())};
    }
    return found;
}

Explanation explain(const Scene& scene) {
    // The first that knows the mistake explains it, so the more special ones come first.
    constexpr std::array makers{
        escape_fault, open_text_fault,    control_fault, date_fault,    inline_table_fault,
        twice_fault,  closed_table_fault, header_fault,  line_fault,    name_fault,
        value_fault,  comma_fault,        element_fault, trailing_fault};
    for (const auto& maker : makers) {
        if (auto found = maker(scene)) {
            return *found;
        }
    }
    return any_fault(scene);
}

} // namespace

std::string syntax::opened_at(const Scene& scene, std::size_t bracket) {
    const auto where = position_of(scene.text, bracket);
    return fmt::format("\"{}\" was opened at {}:{}", scene.text[bracket], where.line, where.column);
}

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
