#include "toml/edit.h"

#include "toml/document.h"
#include "toml/editor.h"
#include "toml/literal.h"

#include <algorithm>
#include <charconv>
#include <span>

namespace thawslip::toml {
namespace {

/// Takes a key or a position off the front of a path. \returns whether there was one
bool take_step(std::string_view& path, bool is_first, Step& step) {
    step = {};
    if (path.front() == '[') {
        const auto end = path.find(']');
        const auto* last = path.data() + std::min(end, path.size());
        const auto read = std::from_chars(path.data() + 1, last, step.position);
        path.remove_prefix(std::min(end, path.size() - 1) + 1);
        return !is_first && end != std::string_view::npos && read.ptr == last &&
               read.ec == std::errc{} && step.position > 0;
    }
    if (!is_first) {
        if (path.front() != '.') {
            return false;
        }
        path.remove_prefix(1);
    }
    const bool is_quoted = path.starts_with('"');
    const auto end =
        is_quoted ? path.find('"', 1) : std::min(path.find_first_of(".["), path.size());
    if (end == std::string_view::npos) {
        return false;
    }
    step.key = path.substr(is_quoted ? 1 : 0, is_quoted ? end - 1 : end);
    path.remove_prefix(is_quoted ? end + 1 : end);
    return !step.key.empty();
}

/// The place in a list of the member that `toml::member` finds.
template <class List>
auto place_of(const Value* found, List& list) {
    return std::ranges::find_if(list,
                                [found](const Member& member) { return &member.value == found; });
}

Spot spot_behind(const Value& value, const Step& step, std::string_view text) {
    if (step.position > 0) {
        const auto* array = std::get_if<Array>(&value.content);
        if (array == nullptr || step.position > array->elements.size()) {
            return {};
        }
        const auto& element = array->elements[step.position - 1];
        return {&element, nullptr, form_of_element(element, text)};
    }
    const auto* members = std::get_if<Members>(&value.content);
    const auto* found = member(value, step.key);
    if (members == nullptr || found == nullptr) {
        return {};
    }
    const auto& there = *place_of(found, members->list);
    return {found, &there, form_of(there, text)};
}

Way way_of(std::vector<Step> steps, const Value& root, std::string_view text) {
    Way way{std::move(steps), {{&root, nullptr, Form::Headed}}};
    for (const auto& step : way.steps) {
        const auto next = spot_behind(*way.end().value, step, text);
        if (next.value == nullptr) {
            break;
        }
        way.spots.push_back(next);
    }
    return way;
}

/// A text with all changes made, those at the end first; they are put into that order.
std::string with(std::string text, std::vector<Change>& changes) {
    std::ranges::stable_sort(changes, std::ranges::greater{}, &Change::offset);
    for (const auto& change : changes) {
        text.replace(change.offset, change.length, change.text);
    }
    return text;
}

bool is_empty(const Value& value) {
    const auto* list = std::get_if<Array>(&value.content);
    const auto* table = std::get_if<Members>(&value.content);
    return (list != nullptr && list->elements.empty()) || (table != nullptr && table->list.empty());
}

/// Takes the value that steps lead to out of another; with it go tables and lists on the way that
/// nothing is left in, for they may have been made for it.
void take_from(Value& value, std::span<const Step> steps) { // NOLINT(misc-no-recursion)
    const auto& step = steps.front();
    const auto goes = [&](Value& next) {
        if (steps.size() > 1) {
            take_from(next, steps.subspan(1));
        }
        return steps.size() == 1 || is_empty(next);
    };
    auto* list = std::get_if<Array>(&value.content);
    if (list != nullptr && step.position > 0 && step.position <= list->elements.size()) {
        const bool is_last = step.position == list->elements.size();
        if (goes(list->elements[step.position - 1]) && is_last) { // else those behind it would move
            list->elements.pop_back();
        }
        return;
    }
    auto* table = std::get_if<Members>(&value.content);
    if (table == nullptr) {
        return;
    }
    const auto found = place_of(member(value, step.key), table->list);
    if (found != table->list.end() && goes(found->value)) {
        table->list.erase(found);
    }
}

/// Whether all but what the steps lead to has the values that it had.
bool is_rest_same(Value before, Value after, std::span<const Step> steps) {
    take_from(before, steps);
    take_from(after, steps);
    return is_same(before, after);
}

/// Whether a key is set, or gone, as it was to be, and nothing else: where the text has mistakes, a
/// value may reach over lines of other keys, and one key may stand twice.
bool is_done(const Edit& edit, const Document& before, const Document& after) {
    const auto steps = *steps_of(edit.path.text());
    const bool sets = edit.what == Edit::What::Set;
    if ((!sets && edit.what != Edit::What::TakeOut) || steps.back().position > 0) {
        return true;
    }
    const auto way = way_of(steps, after.root(), after.text());
    const bool is_right =
        sets ? way.is_whole() && is_same(*way.end().value, edit.value) : !way.is_whole();
    return is_right && is_rest_same(before.root(), after.root(), steps);
}

std::string cannot(const Edit& edit) {
    return "\"" + edit.path.text() +
           "\" cannot be changed as the text is written there: change the text itself";
}

/// One edit; its changes are added to those before.
Result<std::string, std::string> edit_once(const std::string& text, const Edit& edit,
                                           std::vector<Change>& all) {
    Diagnostics before;
    const auto document = parse(text, "", before);
    if (!document.has_values() || document.text().size() != text.size()) {
        return Failure{
            std::string{"the text has a line that belongs to no key: correct that first"}};
    }
    auto found = Editor{text, document.root()}.changes(edit);
    if (!found) {
        return Failure{found.fault()};
    }
    auto changes = std::move(found).value();
    auto edited = with(text, changes);
    Diagnostics after;
    const auto again = parse(edited, "", after);
    if (!again.has_values() || after.size() > before.size() || !is_done(edit, document, again)) {
        return Failure{cannot(edit)};
    }
    all.insert(all.end(), changes.begin(), changes.end());
    return edited;
}

} // namespace

std::optional<std::vector<Step>> steps_of(std::string_view path) {
    std::vector<Step> steps;
    while (!path.empty()) {
        Step step;
        if (!take_step(path, steps.empty(), step)) {
            return std::nullopt;
        }
        steps.push_back(std::move(step));
    }
    return steps.empty() ? std::nullopt : std::optional{std::move(steps)};
}

bool Way::is_enclosed() const {
    return std::ranges::any_of(spots.begin(), spots.end() - 1, [](const Spot& spot) {
        return spot.form == Form::Element || spot.form == Form::Pair;
    });
}

std::string Way::names(std::size_t count) const {
    std::string names;
    for (std::size_t i = 0; i < count; ++i) {
        if (steps[i].position == 0) {
            const bool is_known = i + 1 < spots.size();
            names += (names.empty() ? "" : ".") +
                     key_literal(is_known ? spots[i + 1].member->key : steps[i].key);
        }
    }
    return names;
}

Changes Editor::changes(const Edit& edit) const {
    auto steps = steps_of(edit.path.text());
    if (!steps) {
        return Failure{"\"" + edit.path.text() + "\" is no path of keys"};
    }
    const auto way = way_of(std::move(*steps), root_, text_);
    switch (edit.what) {
    case Edit::What::Set: return set(way, edit.value);
    case Edit::What::Add: return add_element(way, edit.value);
    case Edit::What::TakeOut:
        return way.is_whole() ? take_out(way) : Changes{std::vector<Change>{}};
    case Edit::What::Remove:
    case Edit::What::Copy:
    case Edit::What::Move: break;
    }
    if (!way.is_whole() || way.steps.back().position == 0) {
        return Failure{"there is no \"" + edit.path.text() + "\""};
    }
    return edit.what == Edit::What::Remove ? take_out(way)
           : edit.what == Edit::What::Copy ? copy(way)
                                           : move(way, edit.by);
}

Result<Edited, std::string> edit(std::string text, const std::vector<Edit>& edits) {
    Edited edited{std::move(text), {}};
    for (const auto& one : edits) {
        auto next = edit_once(edited.text, one, edited.changes);
        if (!next) {
            return Failure{next.fault()};
        }
        edited.text = std::move(next).value();
    }
    return edited;
}

} // namespace thawslip::toml
