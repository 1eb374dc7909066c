#pragma once

#include "base/diagnostic.h"
#include "fuzz/target.h"

#include <string_view>

namespace thawslip::fuzz {

/// Every diagnostic can be said, and a mistake in a text has a place in it.
inline void hold_told(const Diagnostics& faults, std::string_view text) {
    for (const auto& fault : faults) {
        hold(!fault.message.empty(), "every diagnostic says something");
        hold(!to_text(fault, text).empty(), "every diagnostic can be shown");
    }
}

} // namespace thawslip::fuzz
