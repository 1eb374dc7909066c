#pragma once

#include "base/diagnostic.h"
#include "toml/document.h"

#include <set>
#include <string>
#include <vector>

namespace thawslip::toml {

class Table;

using Hints = std::vector<std::string>;

/// One pass over a document: hands out its tables, places what is wrong, and remembers every key
/// that was asked for. The document must outlive it, and it must outlive its tables.
class Reader {
public:
    Reader(const Document& document, Diagnostics& faults) : document_{document}, faults_{faults} {}

    const Document& document() const { return document_; }
    Table root();

    /// Places a fault at the value under `key`; the message names what was found and expected.
    void error(const KeyPath& key, std::string message, Hints hints = {});
    /// Places a fault inside the string under `key`, at byte `offset` of its value.
    void error_inside(const KeyPath& key, std::size_t offset, std::string message,
                      Hints hints = {});
    void error_at(const Mark& mark, const KeyPath& key, std::string message, Hints hints = {});
    void caution(const KeyPath& key, std::string message, Hints hints = {});

    /// After this many errors the rest is only counted: nobody reads on.
    static constexpr std::size_t most_errors = 100;
    bool is_full() const { return errors_ >= most_errors; }
    std::size_t errors() const { return errors_; }
    /// Adds a note about errors that were counted but not kept. Call it once, at the end.
    void finish();

    /// Every key asked for so far, sorted, positions left out: `package[].thaw.method`.
    const std::set<std::string>& asked() const { return asked_; }
    void note_asked(const KeyPath& table, std::string_view key);

private:
    void add(Severity severity, SourceSpan where, const KeyPath& key, std::string message,
             Hints hints);

    const Document& document_;
    Diagnostics& faults_;
    std::size_t errors_ = 0;
    std::set<std::string> asked_;
};

} // namespace thawslip::toml
