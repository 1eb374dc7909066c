#include "toml/editor.h"
#include "toml/literal.h"

#include <algorithm>

namespace thawslip::toml {

/// Element by element, so that remarks between them stay: what begins and ends alike stays as it
/// is, then as many as both have in the middle are put into each other's places.
Changes Editor::change_list(const Value& list, const std::vector<Value>& wanted) const {
    const auto& there = std::get<Array>(list.content).elements;
    if (there.empty() || wanted.empty()) {
        return std::vector<Change>{
            {list.place.begin, list.place.end - list.place.begin,
             literal_in_line(Value{Array{wanted}, {}},
                             list.place.begin -
                                 outline_.lines[outline_.line_at(list.place.begin)].begin)}};
    }
    const auto fewest = std::min(there.size(), wanted.size());
    std::size_t front = 0;
    while (front < fewest && is_same(there[front], wanted[front])) {
        ++front;
    }
    std::size_t back = 0;
    while (back < fewest - front &&
           is_same(there[there.size() - 1 - back], wanted[wanted.size() - 1 - back])) {
        ++back;
    }
    std::vector<Change> changes;
    const auto both = fewest - front - back;
    for (auto i = front; i < front + both; ++i) {
        const auto& place = there[i].place;
        changes.push_back({place.begin, place.end - place.begin, literal_of(wanted[i])});
    }
    const auto at = front + both;
    std::vector<Change> more;
    if (wanted.size() > there.size()) {
        more = insert_behind(list, at,
                             {wanted.begin() + static_cast<std::ptrdiff_t>(at),
                              wanted.end() - static_cast<std::ptrdiff_t>(back)});
    } else if (wanted.size() < there.size()) {
        more = cut_elements(list, at, there.size() - back);
    }
    changes.insert(changes.end(), more.begin(), more.end());
    return changes;
}

/// Behind blanks, line ends and remarks, and a comma where one comes. \returns the place behind it,
/// or `at` where there is none
std::size_t Editor::behind_comma(std::size_t at, bool& has_comma) const {
    auto place = at;
    while (place < text_.size()) {
        place = std::min(text_.find_first_not_of(" \t\r\n", place), text_.size());
        if (place == text_.size() || text_[place] != '#') {
            break;
        }
        place = std::min(text_.find('\n', place), text_.size());
    }
    has_comma = place < text_.size() && text_[place] == ',';
    return has_comma ? place + 1 : at;
}

/// New elements in front of the one that stands at `element` now; behind the last one where that is
/// their number. \pre the list is not empty
std::vector<Change> Editor::insert_behind(const Value& list, std::size_t element,
                                          const std::vector<Value>& more) const {
    const auto& there = std::get<Array>(list.content).elements;
    const auto& near = there[std::min(element, there.size() - 1)].place;
    const auto line = outline_.lines[outline_.line_at(near.begin)];
    const auto indent = words(line.begin, near.begin);
    const bool has_own_line = indent.find_first_not_of(" \t") == std::string_view::npos;
    const auto between = has_own_line ? line_end_ + std::string{indent} : std::string{" "};
    std::string literals;
    for (const auto& one : more) {
        literals += literal_of(one) + "," + (element < there.size() ? between : "");
    }
    if (element < there.size()) {
        return {{near.begin, 0, literals}};
    }
    literals.clear();
    for (const auto& one : more) {
        literals += (literals.empty() ? "" : ",") + between + literal_of(one);
    }
    bool has_comma = false;
    const auto behind = behind_comma(near.end, has_comma);
    const auto last_line = outline_.lines[outline_.line_at(behind)];
    const auto rest = words(behind, last_line.end);
    const auto word = rest.find_first_not_of(" \t");
    const bool ends_line = word == std::string_view::npos || rest[word] == '#';
    if (!has_own_line || !ends_line) {
        return {{near.end, 0, "," + literals}};
    }
    std::vector<Change> changes{{last_line.end, 0, literals + (has_comma ? "," : "")}};
    if (!has_comma) {
        changes.push_back({near.end, 0, ","});
    }
    return changes;
}

/// Those from `first` to before `end`: whole lines where they have lines of their own.
std::vector<Change> Editor::cut_elements(const Value& list, std::size_t first,
                                         std::size_t end) const {
    const auto& there = std::get<Array>(list.content).elements;
    std::vector<Change> changes;
    bool are_whole_lines = true;
    for (auto i = first; i < end; ++i) {
        const auto begin_line = outline_.lines[outline_.line_at(there[i].place.begin)];
        bool has_comma = false;
        const auto behind = behind_comma(there[i].place.end, has_comma);
        const auto end_at = outline_.line_at(there[i].place.end);
        const auto end_line = outline_.lines[end_at];
        const auto rest = behind <= end_line.end ? words(behind, end_line.end) : "x";
        const auto word = rest.find_first_not_of(" \t");
        const bool is_alone =
            words(begin_line.begin, there[i].place.begin).find_first_not_of(" \t") ==
                std::string_view::npos &&
            (word == std::string_view::npos || rest[word] == '#') &&
            end_at + 1 < outline_.lines.size();
        are_whole_lines = are_whole_lines && is_alone;
        if (is_alone) {
            const auto next = outline_.lines[end_at + 1].begin;
            changes.push_back({begin_line.begin, next - begin_line.begin, {}});
        }
    }
    if (are_whole_lines) {
        return changes;
    }
    const auto from =
        end < there.size() || first == 0 ? there[first].place.begin : there[first - 1].place.end;
    const auto to = end < there.size() ? there[end].place.begin : there[end - 1].place.end;
    return {{from, to - from, {}}};
}

} // namespace thawslip::toml
