#include "app/commands/report.h"

#include <algorithm>
#include <ostream>

namespace thawslip::app {

void print(std::ostream& out, Diagnostics diagnostics, std::span<const toml::Document> documents) {
    sort_by_place(diagnostics);
    for (const auto& diagnostic : diagnostics) {
        const auto source =
            std::ranges::find(documents, diagnostic.where.file, &toml::Document::file);
        out << to_text(diagnostic, source == documents.end() ? std::string_view{} : source->text());
    }
}

void place(Diagnostics& diagnostics, const toml::Document& document) {
    for (auto& diagnostic : diagnostics) {
        if (diagnostic.where.file.empty()) {
            diagnostic.where = document.place(diagnostic.key);
        }
    }
}

} // namespace thawslip::app
