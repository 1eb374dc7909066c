#include "service/messages.h"

#include <algorithm>

namespace thawslip::service {

void Messages::add(Severity severity, std::string message, std::vector<std::string> hints) {
    add_in_order({{severity, {}, {}, std::move(message), std::move(hints)}}, {});
}

void Messages::error(std::string message, std::vector<std::string> hints) {
    add(Severity::Error, std::move(message), std::move(hints));
}

void Messages::caution(std::string message, std::vector<std::string> hints) {
    add(Severity::Caution, std::move(message), std::move(hints));
}

void Messages::note(std::string message) {
    add(Severity::Note, std::move(message), {});
}

void Messages::add(Diagnostics diagnostics, std::span<const toml::Document> documents) {
    sort_by_place(diagnostics);
    for (const auto& diagnostic : diagnostics) {
        const auto source =
            std::ranges::find(documents, diagnostic.where.file, &toml::Document::file);
        add_in_order({diagnostic}, source == documents.end() ? std::string_view{} : source->text());
    }
}

void Messages::add_in_order(const Diagnostics& diagnostics, std::string_view source) {
    for (const auto& diagnostic : diagnostics) {
        all_.push_back({diagnostic, thawslip::to_text(diagnostic, source)});
    }
}

void Messages::add(const Messages& more) {
    all_.insert(all_.end(), more.all_.begin(), more.all_.end());
}

void Messages::add_new(const Messages& more) {
    for (const auto& message : more.all_) {
        if (std::ranges::find(all_, message) == all_.end()) {
            all_.push_back(message);
        }
    }
}

bool Messages::have_errors() const {
    return std::ranges::any_of(
        all_, [](const Message& message) { return message.what.severity == Severity::Error; });
}

std::string to_text(const Messages& messages) {
    std::string text;
    for (const auto& message : messages.all()) {
        text += message.text;
    }
    return text;
}

} // namespace thawslip::service
