#pragma once

#include "base/key_path.h"
#include "toml/value.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::toml {

/// A mistake against TOML's grammar.
struct Mistake {
    Stretch where;
    std::string message;            ///< what was found, what was expected
    std::vector<std::string> hints; ///< what to write instead
    KeyPath key;                    ///< whose value it spoilt; empty where none can be named
};

/// What one pass over a text found.
struct Scan {
    Value root;                    ///< values that a mistake spoilt are Unreadable
    std::vector<Mistake> mistakes; ///< by their place, one a line
    bool lost = false;             ///< some line belongs to no key, so keys may seem missing
};

/// Reads TOML 1.0 (toml.io/en/v1.0.0, 2021). After a mistake it goes on where the next value or
/// line begins, so that one does not hide the others; after twenty-one nobody reads on.
/// \param depth most brackets inside brackets, and most dotted names of one key
/// \pre `text` is UTF-8 without NUL, and its carriage returns stand before line feeds
Scan scan(std::string_view text, std::size_t depth);

} // namespace thawslip::toml
