#include "toml/tree.h"

#include "base/list.h"
#include "toml/faults.h"

#include <algorithm>

namespace thawslip::toml {

Tree::Id Tree::add_loose(Kind kind) {
    nodes_.push_back({kind, root, {}, {}, {}});
    return nodes_.size() - 1;
}

Tree::Id Tree::add(Id parent, const Name& key, Kind kind, Stretch place) {
    const auto id = nodes_.size();
    nodes_.push_back({kind, parent, key, {{}, place}, {}});
    nodes_[parent].below.push_back(id);
    index_.emplace(std::pair{parent, key.name}, id);
    return id;
}

const Tree::Id* Tree::find(Id parent, const std::string& name) const {
    const auto found = index_.find({parent, name});
    return found == index_.end() ? nullptr : &found->second;
}

Tree::Id Tree::new_element(Id list, Stretch header) {
    const auto id = add_loose(Kind::Headed);
    nodes_[id].parent = list;
    nodes_[id].value.place = header;
    nodes_[list].below.push_back(id);
    return id;
}

Tree::Place Tree::add_pair(Id table, std::span<const Name> names) {
    for (std::size_t i = 0; i + 1 < names.size(); ++i) {
        const auto* known = find(table, names[i].name);
        if (known == nullptr) {
            table = add(table, names[i], Kind::Dotted, names[i].place);
            continue;
        }
        table = *known;
        auto& kind = nodes_[table].kind;
        if (kind != Kind::Dotted && kind != Kind::Implied) {
            return Failure{Obstacle{i, kind}};
        }
        kind = Kind::Dotted; // so that no header may define it any more
    }
    if (const auto* known = find(table, names.back().name)) {
        return Failure{Obstacle{names.size() - 1, nodes_[*known].kind}};
    }
    return add(table, names.back(), Kind::Value, {});
}

/// From a table to one that a header names on its way: the last element of a list.
Result<Tree::Id, Tree::Kind> Tree::step_down(Id from, const Name& name, Stretch header) {
    const auto* known = find(from, name.name);
    if (known == nullptr) {
        return add(from, name, Kind::Implied, header);
    }
    switch (nodes_[*known].kind) {
    case Kind::Value:
    case Kind::InBraces: return Failure{nodes_[*known].kind};
    case Kind::List: return nodes_[*known].below.back();
    case Kind::Implied:
    case Kind::Dotted:
    case Kind::Headed: break;
    }
    return *known;
}

Tree::Place Tree::open(std::span<const Name> names, Stretch header, bool listed) {
    Id table = root;
    for (std::size_t i = 0; i + 1 < names.size(); ++i) {
        const auto next = step_down(table, names[i], header);
        if (!next) {
            return Failure{Obstacle{i, next.fault()}};
        }
        table = next.value();
    }
    const auto* known = find(table, names.back().name);
    if (known == nullptr) {
        const auto id = add(table, names.back(), listed ? Kind::List : Kind::Headed, header);
        return listed ? new_element(id, header) : id;
    }
    auto& node = nodes_[*known];
    if (listed && node.kind == Kind::List) {
        return new_element(*known, header);
    }
    if (listed || node.kind != Kind::Implied) {
        return Failure{Obstacle{names.size() - 1, node.kind}};
    }
    node.kind = Kind::Headed;
    node.value.place = header;
    return *known;
}

void Tree::set(Id pair, Value value) {
    const bool table = std::holds_alternative<Members>(value.content);
    nodes_[pair].kind = table ? Kind::InBraces : Kind::Value;
    nodes_[pair].value = std::move(value);
}

KeyPath Tree::path_of(Id node) const {
    if (node == root) {
        return {};
    }
    const auto& [kind, parent, key, value, below] = nodes_[node];
    const auto above = path_of(parent);
    if (nodes_[parent].kind != Kind::List) {
        return above.key(written_key(key.name));
    }
    const auto& all = nodes_[parent].below;
    return above.index(static_cast<std::size_t>(std::ranges::find(all, node) - all.begin()));
}

Value Tree::take(Id node) {
    auto& [kind, parent, key, value, below] = nodes_[node];
    if (kind == Kind::List) {
        value.content = Array{mapped(below, [this](Id id) { return take(id); })};
    } else if (std::holds_alternative<Members>(value.content)) {
        auto& members = std::get<Members>(value.content);
        for (const auto id : below) {
            auto& [name, place] = nodes_[id].key;
            members.list.push_back({std::move(name), place, take(id)});
        }
    }
    return std::move(value);
}

} // namespace thawslip::toml
