#include "toml/editor.h"
#include "toml/literal.h"

#include <algorithm>

namespace thawslip::toml {
namespace {

/// What a value is below steps that lead nowhere yet: tables, and lists of one.
std::optional<Value> below(const std::vector<Step>& steps, std::size_t first, Value value) {
    for (auto i = steps.size(); i > first; --i) {
        const auto& step = steps[i - 1];
        Value outer;
        if (step.position > 1) {
            return std::nullopt;
        }
        if (step.position == 1) {
            Array list;
            list.elements.push_back(std::move(value));
            outer.content = std::move(list);
        } else {
            Members table;
            table.list.push_back({step.key, {}, std::move(value)});
            outer.content = std::move(table);
        }
        value = std::move(outer);
    }
    return value;
}

/// Where the last value below a table in braces, or made by dots, ends.
std::size_t last_end(const Value& table) {
    std::size_t end = 0;
    for (const auto& member : std::get<Members>(table.content).list) {
        const bool is_dotted =
            is_table(member.value) && member.value.place.begin == member.key_place.begin;
        end = std::max(end, is_dotted ? last_end(member.value) : member.value.place.end);
    }
    return end;
}

bool has_control(std::string_view text) {
    return std::ranges::any_of(
        text, [](char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; });
}

/// The first equals sign of a line that is in no quotes.
std::size_t equals_in(std::string_view line) {
    char quote = '\0';
    for (std::size_t i = 0; i < line.size(); ++i) {
        if (quote == '"' && line[i] == '\\') {
            ++i; // whatever is escaped closes nothing
        } else if (quote != '\0') {
            quote = line[i] == quote ? '\0' : quote;
        } else if (line[i] == '"' || line[i] == '\'') {
            quote = line[i];
        } else if (line[i] == '=') {
            return i;
        }
    }
    return std::string_view::npos;
}

} // namespace

Changes Editor::set(const Way& way, const Value& value) const {
    if (way.is_whole()) {
        return replace(way, value);
    }
    const auto& next = way.steps[way.known()];
    const auto nested = below(way.steps, way.known() + 1, value);
    const auto* list = std::get_if<Array>(&way.end().value->content);
    const bool is_next_element =
        list != nullptr && next.position == list->elements.size() + 1 && nested;
    if (is_next_element) {
        auto to_list = way;
        to_list.steps.resize(way.known());
        return add_element(to_list, *nested);
    }
    if (next.position > 0 || !nested || !is_table(*way.end().value)) {
        return Failure{"there is no \"" + way.names(way.steps.size()) + "\" to be set"};
    }
    return add_key(way, next.key, *nested);
}

/// A value in the manner of the one that it takes the place of.
Changes Editor::replace(const Way& way, const Value& value) const {
    const auto& spot = way.end();
    const auto& before = *spot.value;
    if (is_same(before, value)) {
        return std::vector<Change>{};
    }
    if (spot.form != Form::Pair && spot.form != Form::Element) {
        return Failure{"\"" + way.names(way.steps.size()) + "\" is a table: set its keys"};
    }
    const auto* list = std::get_if<Array>(&value.content);
    if (list != nullptr && std::holds_alternative<Array>(before.content)) {
        return change_list(before, list->elements);
    }
    const auto* text = std::get_if<std::string>(&value.content);
    const auto written = words(before.place.begin, before.place.end);
    const bool is_literal = written.starts_with('\'') && !written.starts_with("\'\'\'");
    auto literal = way.is_enclosed() || spot.form == Form::Element
                       ? literal_of(value)
                       : literal_in_line(
                             value, before.place.begin -
                                        outline_.lines[outline_.line_at(before.place.begin)].begin);
    if (text != nullptr && is_literal && text->find('\'') == std::string::npos &&
        !has_control(*text)) {
        literal = '\'' + *text + '\'';
    }
    return std::vector<Change>{{before.place.begin, written.size(), std::move(literal)}};
}

Changes Editor::add_key(const Way& way, const std::string& key, const Value& value) const {
    const auto form = way.end().form;
    if (form == Form::Pair || form == Form::Element) {
        return add_in_braces(*way.end().value, key_literal(key) + " = " + literal_of(value));
    }
    if (form == Form::Dotted) {
        return add_dotted(way, key, value);
    }
    return is_table(value) || is_list_of_tables(value) ? add_table(way, key, value)
                                                       : add_line(way, key, value);
}

Changes Editor::add_in_braces(const Value& table, const std::string& pair) const {
    const auto end = last_end(table);
    if (end > 0) {
        return std::vector<Change>{{end, 0, ", " + pair}};
    }
    return std::vector<Change>{
        {table.place.begin, table.place.end - table.place.begin, "{" + pair + "}"}};
}

/// Behind the last key that made the table, with the same names in front: `thaw.method`.
Changes Editor::add_dotted(const Way& way, const std::string& key, const Value& value) const {
    const auto& table = *way.end().value;
    const auto& sibling = std::get<Members>(table.content).list.back().key_place;
    const auto line = outline_.lines[outline_.line_at(sibling.begin)].begin;
    const auto brace = text_.substr(0, sibling.begin).find_last_of(",{");
    const auto from = way.is_enclosed() && brace != std::string_view::npos ? brace + 1 : line;
    const auto begin = text_.find_first_not_of(" \t", from);
    const auto written = std::string{words(begin, sibling.begin)} + key_literal(key);
    const auto end = last_end(table);
    if (way.is_enclosed()) {
        return std::vector<Change>{{end, 0, ", " + written + " = " + literal_of(value)}};
    }
    const auto last = outline_.line_at(end);
    const auto first = outline_.line_at(sibling.begin);
    const auto pair = pair_line(manner_of(first, last), written, value);
    return std::vector<Change>{{outline_.lines[last].end, 0, line_end_ + pair}};
}

/// In a line of its own, behind the last key of its table.
Changes Editor::add_line(const Way& way, const std::string& key, const Value& value) const {
    const auto& table = *way.end().value;
    const auto written = key_literal(key);
    if (const auto* section = section_of(table)) {
        auto manner = manner_of(section->header_line, section->last_pair);
        return std::vector<Change>{{outline_.lines[section->last_pair].end, 0,
                                    line_end_ + pair_line(manner, written, value)}};
    }
    const bool is_file = &table == &root_;
    const auto below_it = sections_below(table);
    if (!is_file) { // only those below it have headers
        const auto& first = outline_.sections[below_it.front()];
        return std::vector<Change>{{outline_.lines[first.first_line].begin, 0,
                                    "[" + way.names(way.known()) + "]" + line_end_ +
                                        pair_line({}, written, value) + line_end_ + line_end_}};
    }
    const auto end =
        outline_.sections.empty() ? outline_.lines.size() : outline_.sections.front().first_line;
    auto last = end;
    for (std::size_t line = 0; line < end; ++line) {
        const auto kind = outline_.lines[line].kind;
        last = kind == LineKind::Pair || kind == LineKind::More ? line : last;
    }
    if (last < end) {
        return std::vector<Change>{{outline_.lines[last].end, 0,
                                    line_end_ + pair_line(manner_of(0, last), written, value)}};
    }
    const auto pair = pair_line({}, written, value) + line_end_;
    return std::vector<Change>{end < outline_.lines.size()
                                   ? Change{outline_.lines[end].begin, 0, pair + line_end_}
                                   : Change{0, 0, pair}};
}

Changes Editor::take_out(const Way& way) const {
    const auto& spot = way.end();
    switch (spot.form) {
    case Form::Element: {
        auto wanted = std::get<Array>(way.spots.end()[-2].value->content).elements;
        wanted.erase(wanted.begin() + static_cast<std::ptrdiff_t>(way.steps.back().position) - 1);
        return change_list(*way.spots.end()[-2].value, wanted);
    }
    case Form::Headed:
    case Form::Implied:
    case Form::List: return remove(way);
    case Form::Pair:
    case Form::Dotted: break;
    }
    if (way.is_enclosed()) {
        return spot.form == Form::Pair
                   ? take_out_of_braces(*way.spots.end()[-2].value, *spot.member)
                   : Failure{std::string{"a table inside of braces is taken out key by key"}};
    }
    if (spot.form == Form::Dotted) {
        std::vector<Change> changes;
        for (const auto& member : std::get<Members>(spot.value->content).list) {
            auto further = way;
            further.steps.push_back({member.key});
            further.spots.push_back({&member.value, &member, form_of(member, text_)});
            const auto more = take_out(further).value(); // in lines, so that nothing hinders
            changes.insert(changes.end(), more.begin(), more.end());
        }
        return changes;
    }
    const auto first = outline_.line_at(spot.member->key_place.begin);
    const auto last = outline_.line_at(std::max(spot.value->place.end, spot.member->key_place.end));
    const auto begin = outline_.lines[first].begin;
    const auto end =
        last + 1 < outline_.lines.size() ? outline_.lines[last + 1].begin : text_.size();
    return std::vector<Change>{{begin, end - begin, {}}};
}

/// With one comma: that in front of it, or for the first one that behind it.
Changes Editor::take_out_of_braces(const Value& table, const Member& member) const {
    const auto before = text_.substr(0, member.key_place.begin).find_last_of(",{");
    const auto end = member.value.place.end;
    if (text_[before] == ',') {
        return std::vector<Change>{{before, end - before, {}}};
    }
    const auto next = text_.find_first_not_of(" \t", end);
    if (next != std::string_view::npos && text_[next] == ',') {
        const auto begin = text_.find_first_not_of(" \t", before + 1);
        const auto rest = text_.find_first_not_of(" \t", next + 1);
        return std::vector<Change>{{begin, rest - begin, {}}};
    }
    return std::vector<Change>{{table.place.begin, table.place.end - table.place.begin, "{}"}};
}

/// A value behind its key in a line of its own: texts of several lines as such, a list that is too
/// long for the line with a line for each.
std::string Editor::literal_in_line(const Value& value, std::size_t column) const {
    constexpr std::size_t longest = 100;
    const auto* text = std::get_if<std::string>(&value.content);
    if (text != nullptr && text->find('\n') != std::string::npos) {
        std::string lines;
        for (const char c : escaped(*text, /*keep_line_ends=*/true)) {
            lines += c == '\n' ? line_end_ : std::string{c};
        }
        return "\"\"\"" + line_end_ + lines + "\"\"\"";
    }
    auto literal = literal_of(value);
    const auto* list = std::get_if<Array>(&value.content);
    if (list == nullptr || list->elements.size() < 2 || column + literal.size() <= longest) {
        return literal;
    }
    literal = "[" + line_end_;
    for (const auto& element : list->elements) {
        literal += "    " + literal_of(element) + "," + line_end_;
    }
    return literal + "]";
}

std::string Editor::pair_line(const Manner& manner, const std::string& key,
                              const Value& value) const {
    auto head = manner.indent + key;
    head += key.size() < manner.column ? std::string(manner.column - key.size(), ' ')
            : manner.column > 0        ? " "
                                       : manner.before;
    head += "=" + manner.after;
    return head + literal_in_line(value, head.size());
}

Manner Editor::manner_of(std::size_t first_line, std::size_t last_line) const {
    Manner manner;
    for (auto i = first_line; i <= last_line; ++i) {
        const auto& line = outline_.lines[i];
        const auto written = words(line.begin, line.end);
        const auto begin = std::min(written.find_first_not_of(" \t"), written.size());
        manner.indent = line.kind == LineKind::Header || line.kind == LineKind::Pair
                            ? written.substr(0, begin)
                            : manner.indent;
        const auto equals =
            line.kind == LineKind::Pair ? equals_in(written) : std::string_view::npos;
        if (equals == std::string_view::npos) {
            continue;
        }
        const auto key_end = written.substr(0, equals).find_last_not_of(" \t") + 1;
        const auto value = written.find_first_not_of(" \t", equals + 1);
        manner.before = written.substr(key_end, equals - key_end);
        manner.after = written.substr(equals + 1, std::min(value, written.size()) - equals - 1);
        manner.column = manner.before.size() > 1 ? equals - begin : manner.column;
    }
    manner.before = manner.before.size() > 1 ? " " : manner.before;
    return manner;
}

const Section* Editor::section_of(const Value& table) const {
    const auto found = std::ranges::find(outline_.sections, &table, &Section::table);
    return found == outline_.sections.end() ? nullptr : &*found;
}

} // namespace thawslip::toml
