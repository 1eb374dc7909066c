#include "base/list.h"
#include "toml/editor.h"
#include "toml/literal.h"

#include <algorithm>

namespace thawslip::toml {
namespace {

/// The tables with headers at and below a value.
void gather(const Value& value, std::vector<const Value*>& tables) {
    if (const auto* list = std::get_if<Array>(&value.content)) {
        for (const auto& element : list->elements) {
            gather(element, tables);
        }
    } else if (const auto* members = std::get_if<Members>(&value.content)) {
        tables.push_back(&value);
        for (const auto& member : members->list) {
            gather(member.value, tables);
        }
    }
}

} // namespace

std::vector<std::size_t> Editor::sections_below(const Value& table) const {
    std::vector<const Value*> tables;
    gather(table, tables);
    std::vector<std::size_t> sections;
    for (std::size_t i = 0; i < outline_.sections.size(); ++i) {
        if (std::ranges::find(tables, outline_.sections[i].table) != tables.end()) {
            sections.push_back(i);
        }
    }
    return sections;
}

std::vector<Editor::Range> Editor::ranges_of(const std::vector<std::size_t>& sections) const {
    std::vector<Range> ranges;
    for (std::size_t i = 0; i < sections.size(); ++i) {
        const auto& section = outline_.sections[sections[i]];
        const bool goes_on = i > 0 && sections[i - 1] + 1 == sections[i];
        if (goes_on) {
            ranges.back().last = section.last_line;
        } else {
            ranges.push_back({section.first_line, section.last_line});
        }
    }
    return ranges;
}

/// Lines, and the blank ones behind them; at the end of the text those in front of them.
Change Editor::without(Range range) const {
    const auto& lines = outline_.lines;
    const auto is_blank = [&lines](std::size_t line) {
        return lines[line].kind == LineKind::Blank;
    };
    auto next = range.last + 1;
    while (next < lines.size() && is_blank(next)) {
        ++next;
    }
    auto first = range.first;
    while (next == lines.size() && first > 0 && is_blank(first - 1)) {
        --first;
    }
    const auto begin = lines[first].begin;
    const auto end = next < lines.size() ? lines[next].begin : text_.size();
    return {begin, end - begin, {}};
}

/// A block in lines of its own behind a line, a blank one between.
Change Editor::behind_line(std::size_t line, const std::string& block) const {
    return {outline_.lines[line].end, 0, line_end_ + line_end_ + block};
}

std::string Editor::block(const std::string& names, bool is_listed, const Members& members,
                          const Manner& manner) const {
    auto text = manner.indent + (is_listed ? "[[" + names + "]]" : "[" + names + "]");
    for (const auto& [key, place, value] : members.list) {
        if (!is_table(value) && !is_list_of_tables(value)) {
            text += line_end_ + pair_line(manner, key_literal(key), value);
        }
    }
    for (const auto& [key, place, value] : members.list) {
        const auto below = names + "." + key_literal(key);
        if (is_table(value)) {
            text += line_end_ + line_end_ +
                    block(below, false, std::get<Members>(value.content), {manner.indent});
        } else if (is_list_of_tables(value)) {
            for (const auto& element : std::get<Array>(value.content).elements) {
                text += line_end_ + line_end_ +
                        block(below, true, std::get<Members>(element.content), {manner.indent});
            }
        }
    }
    return text;
}

/// A table behind the keys of the one that it is in; a list of tables behind all of that.
Changes Editor::add_table(const Way& way, const std::string& key, const Value& value) const {
    const auto above = way.names(way.known());
    const auto names = (above.empty() ? "" : above + ".") + key_literal(key);
    std::string text;
    if (is_table(value)) {
        text = block(names, false, std::get<Members>(value.content), {});
    } else {
        for (const auto& element : std::get<Array>(value.content).elements) {
            text += (text.empty() ? "" : line_end_ + line_end_) +
                    block(names, true, std::get<Members>(element.content), {});
        }
    }
    const auto& table = *way.end().value;
    const auto sections = sections_below(table);
    if (const auto* section = section_of(table); section != nullptr && is_table(value)) {
        return std::vector<Change>{behind_line(section->last_line, text)};
    }
    if (&table != &root_) {
        return std::vector<Change>{behind_line(outline_.sections[sections.back()].last_line, text)};
    }
    if (is_table(value) && !outline_.sections.empty()) {
        const auto first = outline_.sections.front().first_line;
        return std::vector<Change>{{outline_.lines[first].begin, 0, text + line_end_ + line_end_}};
    }
    auto last = outline_.lines.size();
    for (std::size_t line = 0; line < outline_.lines.size(); ++line) {
        last = outline_.lines[line].kind == LineKind::Blank ? last : line;
    }
    return std::vector<Change>{last == outline_.lines.size() ? Change{0, 0, text + line_end_}
                                                             : behind_line(last, text)};
}

Changes Editor::add_element(const Way& way, const Value& value) const {
    if (!way.is_whole()) {
        Array list;
        list.elements.push_back(value);
        return set(way, Value{std::move(list), {}});
    }
    const auto* list = std::get_if<Array>(&way.end().value->content);
    if (list == nullptr) {
        return Failure{"\"" + way.names(way.steps.size()) + "\" is no list"};
    }
    if (way.end().form != Form::List) {
        auto wanted = list->elements;
        wanted.push_back(value);
        return change_list(*way.end().value, wanted);
    }
    if (!is_table(value)) {
        return Failure{"\"" + way.names(way.steps.size()) + "\" is a list of tables"};
    }
    const auto& last = list->elements.back();
    const auto& head = *section_of(last);
    auto manner = manner_of(head.header_line, head.last_pair);
    const auto line = outline_.sections[sections_below(last).back()].last_line;
    return std::vector<Change>{behind_line(
        line, block(way.names(way.steps.size()), true, std::get<Members>(value.content), manner))};
}

Changes Editor::remove(const Way& way) const {
    return mapped(ranges_of(sections_below(*way.end().value)),
                  [this](const auto& range) { return without(range); });
}

Changes Editor::copy(const Way& way) const {
    const auto& element = *way.end().value;
    if (way.end().form == Form::Element) {
        auto wanted = std::get<Array>(way.spots.end()[-2].value->content).elements;
        wanted.insert(wanted.begin() + static_cast<std::ptrdiff_t>(way.steps.back().position),
                      element);
        return change_list(*way.spots.end()[-2].value, wanted);
    }
    const auto ranges = ranges_of(sections_below(element));
    const auto text = joined(ranges, line_end_ + line_end_, [this](const auto& range) {
        return words(outline_.lines[range.first].begin, outline_.lines[range.last].end);
    });
    return std::vector<Change>{behind_line(ranges.back().last, text)};
}

/// Each block between both places takes the place of the next, and the moved one the last: what
/// stands between blocks stays.
Changes Editor::move(const Way& way, int by) const {
    const auto& list = *way.spots.end()[-2].value;
    auto wanted = std::get<Array>(list.content).elements;
    const auto from = static_cast<std::ptrdiff_t>(way.steps.back().position) - 1;
    const auto to = from + by;
    if (to < 0 || to >= static_cast<std::ptrdiff_t>(wanted.size())) {
        return Failure{std::string{"there is no place so far up or down"}};
    }
    const auto first = wanted.begin();
    const auto& all = std::get<Array>(list.content).elements;
    std::vector<std::size_t> order(all.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    const auto moved = order.begin() + from;
    from < to ? std::rotate(moved, moved + 1, order.begin() + to + 1)
              : std::rotate(order.begin() + to, moved, moved + 1);
    if (way.end().form == Form::Element) {
        std::ranges::transform(order, first, [&all](std::size_t i) { return all[i]; });
        return change_list(list, wanted);
    }
    std::vector<Change> changes;
    for (std::size_t i = 0; i < order.size(); ++i) {
        if (order[i] == i) {
            continue;
        }
        const auto here = ranges_of(sections_below(all[i]));
        const auto there = ranges_of(sections_below(all[order[i]]));
        if (here.size() != 1 || there.size() != 1) {
            return Failure{std::string{"other tables stand between its own: move it in the text"}};
        }
        const auto& lines = outline_.lines;
        const auto begin = lines[here[0].first].begin;
        changes.push_back(
            {begin, lines[here[0].last].end - begin,
             std::string{words(lines[there[0].first].begin, lines[there[0].last].end)}});
    }
    return changes;
}

} // namespace thawslip::toml
