#pragma once

#include "base/diagnostic.h"
#include "toml/position.h"

#include <string>
#include <string_view>

namespace thawslip::toml {

/// A syntax error as the parser tells it: its own words, and where it noticed.
struct SyntaxError {
    Position noticed;
    std::string description;
};

/// The same for a cook: placed at the culprit, which often stands before the place where the
/// parser noticed, and with what to write instead, as far as that can be told.
Diagnostic explain_syntax(std::string_view text, const std::string& file, const SyntaxError& error);

} // namespace thawslip::toml
