#pragma once

#include "base/diagnostic.h"
#include "toml/value.h"

#include <cstddef>
#include <memory>
#include <string>
#include <vector>

namespace thawslip::toml {

/// What is refused before a parser sees the text.
struct Limits {
    std::size_t bytes = std::size_t{1} << 20U; ///< 1 MiB
    std::size_t depth = 32;                    ///< brackets inside brackets, or parts of one key
};

/// One TOML file: its name, its text, its values, and where each of them stands.
class Document {
public:
    /// How much of the file is TOML.
    enum class State {
        Lost,   ///< no values: some line belongs to no key
        Spoilt, ///< there were mistakes; the values they spoilt are Unreadable
        WellFormed,
    };

    /// A document without values: what is left of a file that could not be read.
    Document(std::string file, std::string text);
    void set(Value root, State state);

    const std::string& file() const { return file_; }
    const std::string& text() const { return text_; } ///< without a byte-order mark
    const Value& root() const { return *root_; }
    bool well_formed() const { return state_ == State::WellFormed; } ///< no syntax error
    bool has_values() const { return state_ != State::Lost; } ///< worth looking for more mistakes

    /// Where the value under `path` stands: a table at its header, anything else at the value.
    /// Where the file has no such key, the nearest enclosing one; else the file's beginning.
    SourceSpan place(const KeyPath& path) const;

    /// Where byte `offset` of the string under `path` stands. Where escapes or line breaks hide
    /// that, the place of the whole string.
    SourceSpan place_inside(const KeyPath& path, std::size_t offset) const;

    /// Of a stretch over several lines, what stands in its first.
    SourceSpan span(Stretch stretch) const;

private:
    std::string file_;
    std::string text_;
    std::vector<std::size_t> lines_{0}; ///< where each begins
    std::shared_ptr<const Value> root_; ///< shared, so that tables survive a move of the document
    State state_ = State::Lost;
};

/// Reads TOML 1.0. What is wrong (too large, not UTF-8, nested too deep, syntax errors) is appended
/// to `faults`, placed, the mistakes of all lines together. Where each could be given to a key the
/// document is Spoilt, else Lost; it still has its text, so that a fault can be shown with its
/// line.
Document parse(std::string text, std::string file, Diagnostics& faults, const Limits& limits = {});

} // namespace thawslip::toml
