// The only file that includes toml++.

#include "toml/library.h"

#include <toml++/toml.h>

namespace thawslip::toml {

std::optional<Objection> library_objection(std::string_view text) {
    try {
        static_cast<void>(::toml::parse(text));
        return std::nullopt;
    } catch (const ::toml::parse_error& error) {
        const auto& [line, column] = error.source().begin;
        return Objection{line, column, std::string{error.description()}};
    }
}

} // namespace thawslip::toml
