#pragma once

#include "base/diagnostic.h"
#include "toml/document.h"

#include <set>
#include <string>
#include <vector>

namespace thawslip::toml {

class Table;

using Hints = std::vector<std::string>;

/// One pass over a document: hands out its tables and places what is wrong. The document must
/// outlive it, and it must outlive its tables.
class Reader {
public:
    /// \param asked where to note every key that is asked for, positions left out
    /// (`package[].thaw.method`): how the keys that a reading function knows are listed
    Reader(const Document& document, Diagnostics& faults, std::set<std::string>* asked = nullptr)
        : document_{document}, faults_{faults}, asked_{asked} {}

    const Document& document() const { return document_; }
    Table root();

    /// Places a fault at the value under `key`; the message names what was found and expected.
    void error(const KeyPath& key, std::string message, Hints hints = {});
    /// Places a fault inside the string under `key`, at byte `offset` of its value.
    void error_inside(const KeyPath& key, std::size_t offset, std::string message,
                      Hints hints = {});
    void error_at(Stretch place, const KeyPath& key, std::string message, Hints hints = {});
    void caution(const KeyPath& key, std::string message, Hints hints = {});

    /// After this many errors the rest is only counted: nobody reads on.
    static constexpr std::size_t most_errors = 100;
    bool is_full() const { return errors_ >= most_errors; }
    std::size_t errors() const { return errors_; }
    /// Adds a note about errors that were counted but not kept. Call it once, at the end.
    void finish();

    void note_asked(const KeyPath& table, std::string_view key);

private:
    void add(Severity severity, SourceSpan where, const KeyPath& key, std::string message,
             Hints hints);

    const Document& document_;
    Diagnostics& faults_;
    std::size_t errors_ = 0;
    std::set<std::string>* asked_;
};

} // namespace thawslip::toml
