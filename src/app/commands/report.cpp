#include "app/commands/report.h"

#include "service/messages.h"

#include <ostream>

namespace thawslip::app {

void print(std::ostream& out, Diagnostics diagnostics, std::span<const toml::Document> documents) {
    service::Messages messages;
    messages.add(std::move(diagnostics), documents);
    out << to_text(messages);
}

} // namespace thawslip::app
