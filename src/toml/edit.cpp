#include "toml/edit.h"

#include "toml/document.h"
#include "toml/editor.h"
#include "toml/literal.h"

#include <algorithm>
#include <charconv>

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
    const auto at = std::ranges::find_if(
        members->list, [found](const Member& member) { return &member.value == found; });
    return {found, &*at, form_of(*at, text)};
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

/// Whether what was set is read back, and a key that was taken out is gone: one that stands twice
/// comes to light again.
bool is_done(const Edit& edit, const Document& after) {
    const bool sets = edit.what == Edit::What::Set;
    if (!sets && edit.what != Edit::What::TakeOut) {
        return true;
    }
    const auto way = way_of(*steps_of(edit.path.text()), after.root(), after.text());
    if (sets) {
        return way.is_whole() && is_same(*way.end().value, edit.value);
    }
    const bool is_element = way.steps.back().position > 0; // the one behind it has moved up
    return is_element || !way.is_whole();
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
    if (!again.has_values() || after.size() > before.size() || !is_done(edit, again)) {
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
