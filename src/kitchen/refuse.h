#pragma once

#include "base/diagnostic.h"

#include <string>
#include <utility>
#include <vector>

namespace thawslip::kitchen {

/// Adds an error at a key of the description, and what to write there instead.
inline void refuse(Diagnostics& faults, KeyPath where, std::string message,
                   std::vector<std::string> hints = {}) {
    faults.push_back({.severity = Severity::Error,
                      .where = {},
                      .key = std::move(where),
                      .message = std::move(message),
                      .hints = std::move(hints)});
}

} // namespace thawslip::kitchen
