#pragma once

#include "base/key_path.h"
#include "base/result.h"
#include "toml/value.h"

#include <cstddef>
#include <string>
#include <vector>

namespace thawslip::toml {

/// One thing to be changed in a text.
struct Edit {
    enum class What {
        Set,     ///< a value, or a key with it where there is none; tables on the way are made
        TakeOut, ///< a key, or all of a table
        Add,     ///< an element at the end of a list, which is made where there is none
        Remove,  ///< an element of a list
        Copy,    ///< an element, again behind itself
        Move,    ///< an element, by so many places
    };
    What what = What::Set;
    KeyPath path;     ///< as messages have it: `package[2].thaw.method`
    Value value = {}; ///< of Set and Add
    int by = 0;       ///< of Move: up is negative
};

/// Bytes of a text and what takes their place.
struct Change {
    std::size_t offset = 0;
    std::size_t length = 0;
    std::string text;
};

/// A text as it is after an edit. The changes are those of one text after the other: each counts in
/// the text that the one before it left.
struct Edited {
    std::string text;
    std::vector<Change> changes;
};

/// Edits the text of a description, so that outside of what is edited no byte changes: remarks,
/// order and blanks stay. A new key stands behind the last one of its table, as its neighbours
/// stand; a new table behind the keys of the one that it is in; a new element behind the last one,
/// with blank lines between. With an element go its tables, the remarks directly above it, and keys
/// of it that are turned into remarks.
///
/// What is made is read again: the text is as much TOML as before, and where a key was set or taken
/// out it is so, and no other value has changed.
/// \returns the text; or why it cannot be edited so, in words
/// \pre `text` has no byte-order mark
Result<Edited, std::string> edit(std::string text, const std::vector<Edit>& edits);

} // namespace thawslip::toml
