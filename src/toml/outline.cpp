#include "toml/outline.h"

#include "toml/faults.h"

#include <algorithm>

namespace thawslip::toml {
namespace {

bool holds(Stretch outer, Stretch inner) {
    return outer.begin <= inner.begin && inner.end <= outer.end;
}

/// Whether a header names this key last, so that it is the key's own.
bool ends_header(Stretch key, Stretch header, std::string_view text) {
    return text.substr(key.end, header.end - key.end).find_first_not_of(" \t]") ==
           std::string_view::npos;
}

std::vector<Line> lines_of(std::string_view text) {
    std::vector<Line> lines;
    for (std::size_t at = 0; at <= text.size();) {
        const auto end = std::min(text.find('\n', at), text.size());
        const bool has_return = end > at && text[end - 1] == '\r';
        lines.push_back({at, has_return ? end - 1 : end});
        at = end + 1;
    }
    return lines;
}

/// The first byte of a line that is no blank; its end where there is none.
std::size_t first_byte(const Line& line, std::string_view text) {
    const auto at = text.substr(0, line.end).find_first_not_of(" \t", line.begin);
    return std::min(at, line.end);
}

struct Walk {
    std::string_view text;
    Outline& outline;

    /// Lines of a value that goes on over several.
    void mark(std::size_t begin, std::size_t end) const {
        const auto first = outline.line_at(begin);
        outline.lines[first].kind = LineKind::Pair;
        for (auto line = first + 1; line <= outline.line_at(std::max(begin, end)); ++line) {
            outline.lines[line].kind = LineKind::More;
        }
    }
    void mark_header(const Value& table) const {
        outline.lines[outline.line_at(table.place.begin)].kind = LineKind::Header;
        outline.sections.push_back({table.place.begin, 0, 0, 0, 0, &table});
    }
    void table(const Value& value) const {
        for (const auto& member : std::get<Members>(value.content).list) {
            this->member(member);
        }
    }
    void member(const Member& member) const {
        const auto form = form_of(member, text);
        if (form == Form::Pair) {
            mark(member.key_place.begin, member.value.place.end);
        } else if (form == Form::List) {
            for (const auto& element : std::get<Array>(member.value.content).elements) {
                mark_header(element);
                table(element);
            }
        } else {
            if (form == Form::Headed) {
                mark_header(member.value);
            }
            table(member.value);
        }
    }
};

/// Blank lines, remarks, and what nobody knows.
void mark_rest(Outline& outline, std::string_view text) {
    for (auto& line : outline.lines) {
        if (line.kind != LineKind::Blank) {
            continue;
        }
        const auto first = first_byte(line, text);
        line.kind = first == line.end    ? LineKind::Blank
                    : text[first] == '#' ? LineKind::Remark
                                         : LineKind::More;
    }
}

/// "# time = …", "# [package.cook]": a key that was turned into a remark, or is there to be taken.
bool is_sleeping_key(const Line& line, std::string_view text) {
    auto words = text.substr(line.begin); // what is looked for stops at the line's end
    words.remove_prefix(std::min(words.find_first_not_of(" \t#"), words.size()));
    const auto is_of_key = [](char c) { return is_bare_letter(c) || c == '.'; };
    const auto key = std::ranges::find_if_not(words, is_of_key);
    auto rest = words.substr(static_cast<std::size_t>(key - words.begin()));
    rest.remove_prefix(std::min(rest.find_first_not_of(" \t"), rest.size()));
    return words.starts_with('[') || (key != words.begin() && rest.starts_with('='));
}

/// The last line that belongs to a section: behind its last own line remarks directly below it, and
/// paragraphs of keys that are turned into remarks.
std::size_t last_line_of(const Outline& outline, std::size_t own, std::size_t end,
                         std::string_view text) {
    auto last = own;
    bool is_new_paragraph = false;
    bool is_ours = true;
    for (auto line = own + 1; line < end; ++line) {
        if (outline.lines[line].kind != LineKind::Remark) {
            is_new_paragraph = true;
            continue;
        }
        if (is_new_paragraph) {
            is_ours = is_sleeping_key(outline.lines[line], text);
            is_new_paragraph = false;
        }
        if (!is_ours) {
            break;
        }
        last = line;
    }
    return last;
}

void measure(Outline& outline, std::string_view text) {
    std::ranges::sort(outline.sections, {}, &Section::header);
    for (auto& section : outline.sections) {
        section.header_line = outline.line_at(section.header);
        section.first_line = section.header_line;
        while (section.first_line > 0 &&
               outline.lines[section.first_line - 1].kind == LineKind::Remark) {
            --section.first_line;
        }
    }
    for (std::size_t i = 0; i < outline.sections.size(); ++i) {
        auto& section = outline.sections[i];
        const auto end = outline.first_of_next(i);
        section.last_pair = section.header_line;
        for (auto line = section.header_line; line < end; ++line) {
            const auto kind = outline.lines[line].kind;
            section.last_pair =
                kind == LineKind::Pair || kind == LineKind::More ? line : section.last_pair;
        }
        section.last_line = last_line_of(outline, section.last_pair, end, text);
    }
}

} // namespace

bool is_table(const Value& value) {
    return std::holds_alternative<Members>(value.content);
}

bool is_list_of_tables(const Value& value) {
    const auto* list = std::get_if<Array>(&value.content);
    return list != nullptr && !list->elements.empty() &&
           std::ranges::all_of(list->elements, is_table);
}

Form form_of_element(const Value& element, std::string_view text) {
    return std::holds_alternative<Members>(element.content) &&
                   text.substr(element.place.begin, 1) == "["
               ? Form::Headed
               : Form::Element;
}

Form form_of(const Member& member, std::string_view text) {
    const auto& place = member.value.place;
    const bool in_header = holds(place, member.key_place);
    if (std::holds_alternative<Array>(member.value.content)) {
        return in_header ? Form::List : Form::Pair;
    }
    if (!std::holds_alternative<Members>(member.value.content)) {
        return Form::Pair;
    }
    const auto first = text.substr(place.begin, 1);
    if (first == "{") {
        return Form::Pair;
    }
    if (first != "[") {
        return Form::Dotted;
    }
    return in_header && !ends_header(member.key_place, place, text) ? Form::Implied : Form::Headed;
}

std::size_t Outline::line_at(std::size_t offset) const {
    const auto after = std::ranges::upper_bound(lines, offset, {}, &Line::begin);
    return static_cast<std::size_t>(after - lines.begin()) - 1;
}

std::size_t Outline::first_of_next(std::size_t section) const {
    return section + 1 < sections.size() ? sections[section + 1].first_line : lines.size();
}

Outline outline_of(const Value& root, std::string_view text) {
    Outline outline;
    outline.lines = lines_of(text);
    Walk{text, outline}.table(root);
    mark_rest(outline, text);
    measure(outline, text);
    return outline;
}

} // namespace thawslip::toml
