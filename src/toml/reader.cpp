#include "toml/reader.h"

#include "toml/file_table.h"

#include <fmt/format.h>

namespace thawslip::toml {

Table Reader::root() {
    return Table{*this, KeyPath{}, document_.root()};
}

void Reader::error(const KeyPath& key, std::string message, Hints hints) {
    add(Severity::Error, document_.place(key), key, std::move(message), std::move(hints));
}

void Reader::error_inside(const KeyPath& key, std::size_t offset, std::string message,
                          Hints hints) {
    add(Severity::Error, document_.place_inside(key, offset), key, std::move(message),
        std::move(hints));
}

void Reader::error_at(Stretch place, const KeyPath& key, std::string message, Hints hints) {
    // Finding the place of a hundred thousand in one line would take a while.
    add(Severity::Error, is_full() ? SourceSpan{} : document_.span(place), key, std::move(message),
        std::move(hints));
}

void Reader::caution(const KeyPath& key, std::string message, Hints hints) {
    add(Severity::Caution, document_.place(key), key, std::move(message), std::move(hints));
}

void Reader::add(Severity severity, SourceSpan where, const KeyPath& key, std::string message,
                 Hints hints) {
    const bool kept = !is_full();
    errors_ += severity == Severity::Error ? 1 : 0;
    if (kept) {
        faults_.push_back({severity, std::move(where), key, std::move(message), std::move(hints)});
    }
}

void Reader::finish() {
    if (errors_ > most_errors) {
        faults_.push_back({Severity::Note,
                           {document_.file(), 0, 0, 0},
                           {},
                           fmt::format("{} more mistakes are not shown", errors_ - most_errors),
                           {}});
    }
}

void Reader::note_asked(const KeyPath& table, std::string_view key) {
    if (asked_ == nullptr) {
        return;
    }
    std::string pattern;
    bool inside = false;
    for (const char c : table.key(key).text()) {
        inside = inside && c != ']';
        if (!inside) {
            pattern += c;
        }
        inside = inside || c == '[';
    }
    asked_->insert(std::move(pattern));
}

} // namespace thawslip::toml
