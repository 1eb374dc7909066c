#pragma once

#include "base/key_path.h"
#include "base/result.h"
#include "toml/value.h"

#include <map>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace thawslip::toml {

/// One name of a dotted key, `thaw` in `[package.thaw]`, and where it stands.
struct Name {
    std::string name;
    Stretch place;
};

/// The tables of a document while it is read: who made each, and so who may add to it (TOML 1.0,
/// "Keys", "Table", "Inline Table", "Array of Tables").
class Tree {
public:
    using Id = std::size_t;
    enum class Kind {
        Value,    ///< a value, lists in brackets among them
        Implied,  ///< a table that a header of one below it names
        Dotted,   ///< a table that a dotted key made
        Headed,   ///< a table with a header of its own
        InBraces, ///< takes no more keys once its brace is closed
        List,     ///< of tables: `[[package]]`
    };
    /// What already stands where a name should lead.
    struct Obstacle {
        std::size_t name; ///< which of the names, from 0
        Kind kind;
    };
    using Place = Result<Id, Obstacle>;

    static constexpr Id root = 0;

    Id add_loose(Kind kind); ///< a table that stands nowhere yet
    /// A new value under a dotted key of `table`. \pre `names` is not empty
    Place add_pair(Id table, std::span<const Name> names);
    /// The table that a header opens. \pre `names` is not empty
    Place open(std::span<const Name> names, Stretch header, bool listed);
    void set(Id pair, Value value);

    KeyPath path_of(Id node) const;
    /// All that stands at and below `node`, which is empty then.
    Value take(Id node);

private:
    struct Node {
        Kind kind = Kind::Value;
        Id parent = root;
        Name key;
        Value value;
        std::vector<Id> below;
    };

    Id add(Id parent, const Name& key, Kind kind, Stretch place);
    const Id* find(Id parent, const std::string& name) const;
    Result<Id, Kind> step_down(Id from, const Name& name, Stretch header);
    Id new_element(Id list, Stretch header);

    std::vector<Node> nodes_{Node{Kind::Headed, root, {}, {}, {}}};
    std::map<std::pair<Id, std::string>, Id> index_;
};

} // namespace thawslip::toml
