#pragma once

#include "support/random.h"
#include "toml/document.h"
#include "toml/edit.h"
#include "toml/editor.h"
#include "toml/literal.h"
#include "toml/outline.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

/// Edits of a text held against the same edits of its values.
namespace thawslip::test_support {

/// A path of a description with the value that it leads to.
struct Path {
    std::string text;
    const toml::Value* value = nullptr;
    bool is_element = false;
};

/// A key as paths have it; nothing for those that no path can name.
inline std::optional<std::string> path_key(const std::string& key) {
    if (key.empty() || key.find_first_of("\"\\\n\t\r.[") != std::string::npos) {
        return std::nullopt;
    }
    const auto literal = toml::key_literal(key);
    return literal.find('\\') == std::string::npos ? std::optional{literal} : std::nullopt;
}

inline void gather_paths(const toml::Value& value, const std::string& path,
                         std::vector<Path>& paths) { // NOLINT(misc-no-recursion)
    if (const auto* members = std::get_if<toml::Members>(&value.content)) {
        for (const auto& member : members->list) {
            if (const auto key = path_key(member.key)) {
                const auto below = path.empty() ? *key : path + "." + *key;
                paths.push_back({below, &member.value});
                gather_paths(member.value, below, paths);
            }
        }
    } else if (const auto* array = std::get_if<toml::Array>(&value.content)) {
        for (std::size_t i = 0; i < array->elements.size(); ++i) {
            const auto below = path + "[" + std::to_string(i + 1) + "]";
            paths.push_back({below, &array->elements[i], true});
            gather_paths(array->elements[i], below, paths);
        }
    }
}

/// Every value of a description.
inline std::vector<Path> paths_of(const toml::Value& root) {
    std::vector<Path> paths;
    gather_paths(root, "", paths);
    return paths;
}

inline toml::Value text_value(std::string text) {
    return {std::move(text), {}};
}

inline toml::Value table_of(std::vector<std::pair<std::string, toml::Value>> members) {
    toml::Members table;
    for (auto& [key, value] : members) {
        table.list.push_back({key, {}, std::move(value)});
    }
    return {std::move(table), {}};
}

inline toml::Value list_of_values(std::vector<toml::Value> elements) {
    return {toml::Array{std::move(elements)}, {}};
}

/// Any value that a page may set.
inline toml::Value random_value(Random& random) {
    static const std::vector<std::string> texts = {
        "",           "Barley stew",      "\"quoted\" and \\", "Größe: 30 mm",
        "two\nlines", "it's # no remark", "a = [b]",           "[package]",
        "\t tab",     "ends in \\",       std::string(90, 'w')};
    switch (random.below(8)) {
    case 0: return {std::int64_t{static_cast<std::int64_t>(random.below(2000)) - 1000}, {}};
    case 1: return {random.between(-10.0, 10.0), {}};
    case 2: return {random.chance(2), {}};
    case 3: return {toml::Date{std::chrono::year{2026} / 10 / 17}, {}};
    case 4: {
        std::vector<toml::Value> list;
        for (auto n = random.below(4); n > 0; --n) {
            list.push_back(text_value(texts[random.below(texts.size())]));
        }
        return list_of_values(std::move(list));
    }
    default: return text_value(texts[random.below(texts.size())]);
    }
}

/// An edit of something that is there.
inline toml::Edit random_edit(const toml::Value& root, Random& random) {
    using What = toml::Edit::What;
    const auto paths = paths_of(root);
    toml::Edit edit;
    edit.value = random_value(random);
    if (paths.empty() || random.chance(12)) {
        edit.path = KeyPath{"new_key"};
        return edit;
    }
    const auto& [path, value, is_element] = paths[random.below(paths.size())];
    edit.path = KeyPath{path};
    if (std::holds_alternative<toml::Members>(value->content) && random.chance(2)) {
        edit.path = edit.path.key(random.chance(2) ? "new_key" : "new_table.new_key");
        return edit;
    }
    if (std::holds_alternative<toml::Array>(value->content) && random.chance(2)) {
        edit.what = What::Add;
        const auto& list = std::get<toml::Array>(value->content).elements;
        if (!list.empty() && toml::is_table(list.front())) {
            edit.value = table_of({{"dish", text_value("New")},
                                   {"below", table_of({{"deep", edit.value}})},
                                   {"more", list_of_values({table_of({{"a", edit.value}})})}});
        }
        return edit;
    }
    if (is_element && random.chance(2)) {
        edit.what = random.chance(3) ? What::Remove : random.chance(2) ? What::Copy : What::Move;
        edit.by = random.chance(2) ? 1 : -1;
        return edit;
    }
    edit.what = random.chance(4) && !is_element ? What::TakeOut : What::Set;
    return edit;
}

/// The values as they are to be after an edit; nothing where it should be refused.
class Model {
public:
    explicit Model(toml::Value root) : root_{std::move(root)} {}

    std::optional<toml::Value> after(const toml::Edit& edit) {
        const auto& path = edit.path.text();
        const auto cut = std::max(path.rfind('.') == std::string::npos ? 0 : path.rfind('.'),
                                  path.rfind('[') == std::string::npos ? 0 : path.rfind('['));
        using What = toml::Edit::What;
        auto* value = find(path);
        if (value == nullptr && edit.what == What::Add) {
            return with_new(path, list_of_values({edit.value}));
        }
        if (edit.what == What::Set && value == nullptr) {
            return with_new(path, edit.value);
        }
        if (value == nullptr) {
            return std::nullopt;
        }
        if (edit.what == What::Set) {
            value->content = edit.value.content;
        } else if (edit.what == What::Add) {
            std::get<toml::Array>(value->content).elements.push_back(edit.value);
        } else if (edit.what == What::TakeOut) {
            auto& members = std::get<toml::Members>(find(path.substr(0, cut))->content).list;
            std::erase_if(members, [value](const auto& member) { return &member.value == value; });
        } else if (!change(std::get<toml::Array>(find(path.substr(0, cut))->content).elements,
                           *value, edit)) {
            return std::nullopt;
        }
        return root_;
    }

private:
    static bool change(std::vector<toml::Value>& list, const toml::Value& value,
                       const toml::Edit& edit) {
        const auto at = &value - list.data();
        if (edit.what == toml::Edit::What::Remove) {
            list.erase(list.begin() + at);
        } else if (edit.what == toml::Edit::What::Copy) {
            const auto copy = value;
            list.insert(list.begin() + at, copy);
        } else {
            const auto to = at + edit.by;
            if (to < 0 || to >= static_cast<std::ptrdiff_t>(list.size())) {
                return false;
            }
            std::swap(list[static_cast<std::size_t>(at)], list[static_cast<std::size_t>(to)]);
        }
        return true;
    }

    toml::Value* find(const std::string& path) {
        if (path.empty()) {
            return &root_;
        }
        for (const auto& one : paths_of(root_)) {
            if (one.text == path) {
                return const_cast<toml::Value*>(one.value); // of our own root
            }
        }
        return nullptr;
    }

    /// A new key, with the tables and lists of one on its way.
    std::optional<toml::Value> with_new(const std::string& path, const toml::Value& value) {
        const auto steps = toml::steps_of(path);
        auto* place = &root_;
        for (const auto& step : steps.value_or(std::vector<toml::Step>{})) {
            place = step.position > 0 ? element(*place, step.position) : key(*place, step.key);
            if (place == nullptr) {
                return std::nullopt;
            }
        }
        place->content = value.content;
        return root_;
    }

    static toml::Value* element(toml::Value& list, std::size_t position) {
        if (const auto* none = std::get_if<toml::Members>(&list.content)) {
            if (!none->list.empty()) {
                return nullptr;
            }
            list.content = toml::Array{};
        }
        auto* array = std::get_if<toml::Array>(&list.content);
        if (array == nullptr || position > array->elements.size() + 1) {
            return nullptr;
        }
        if (position > array->elements.size()) {
            array->elements.push_back({toml::Members{}, {}});
        }
        return &array->elements[position - 1];
    }

    static toml::Value* key(toml::Value& table, const std::string& name) {
        auto* members = std::get_if<toml::Members>(&table.content);
        if (members == nullptr) {
            return nullptr;
        }
        const auto found = std::ranges::find(members->list, name, &toml::Member::key);
        if (found != members->list.end()) {
            return &found->value;
        }
        members->list.push_back({name, {}, {toml::Members{}, {}}});
        return &members->list.back().value;
    }

    toml::Value root_;
};

/// Without tables and lists in which nothing stands: taking the last header of one out takes it
/// out too.
inline toml::Value without_empty(const toml::Value& value) { // NOLINT(misc-no-recursion)
    const auto is_empty = [](const toml::Value& one) {
        const auto* members = std::get_if<toml::Members>(&one.content);
        const auto* array = std::get_if<toml::Array>(&one.content);
        return (members != nullptr && members->list.empty()) ||
               (array != nullptr && array->elements.empty());
    };
    auto result = value;
    if (auto* members = std::get_if<toml::Members>(&result.content)) {
        for (auto& member : members->list) {
            member.value = without_empty(member.value);
        }
        std::erase_if(members->list, [&](const auto& member) { return is_empty(member.value); });
    } else if (auto* array = std::get_if<toml::Array>(&result.content)) {
        for (auto& element : array->elements) {
            element = without_empty(element);
        }
    }
    return result;
}

inline std::vector<std::string> remarks_of(const toml::Value& root, const std::string& text) {
    std::vector<std::string> remarks;
    for (const auto& line : toml::outline_of(root, text).lines) {
        if (line.kind == toml::LineKind::Remark) {
            remarks.push_back(text.substr(line.begin, line.end - line.begin));
        }
    }
    return remarks;
}

/// What is wrong with an edited text; nothing where all is as it should be.
inline std::string fault_of(const std::string& text, const toml::Edit& edit,
                            const toml::Edited& edited) {
    using What = toml::Edit::What;
    Diagnostics faults;
    const auto before = toml::parse(text, "", faults);
    const auto known = faults.size();
    const auto after = toml::parse(edited.text, "", faults);
    if (!after.has_values() || faults.size() > 2 * known) {
        return "it is less TOML than before";
    }
    auto again = text;
    for (const auto& change : edited.changes) {
        again.replace(change.offset, change.length, change.text);
    }
    if (again != edited.text) {
        return "the changes do not make the text";
    }
    const auto wanted = Model{before.root()}.after(edit);
    if (!wanted) {
        return edit.what == What::TakeOut ? "" : "it should have been refused";
    }
    const bool may_empty = edit.what == What::Remove || edit.what == What::TakeOut;
    if (may_empty ? !toml::is_same(without_empty(*wanted), without_empty(after.root()))
                  : !toml::is_same(*wanted, after.root())) {
        return "the values are not those that were to be";
    }
    auto remarks = remarks_of(before.root(), text);
    auto now = remarks_of(after.root(), edited.text);
    if (edit.what == What::Set && remarks != now) {
        return "a remark is lost or moved";
    }
    std::ranges::sort(remarks);
    std::ranges::sort(now);
    if (!may_empty && !std::ranges::includes(now, remarks)) {
        return "a remark is lost";
    }
    return {};
}

} // namespace thawslip::test_support
