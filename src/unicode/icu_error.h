#pragma once

#include <stdexcept>
#include <string>
#include <unicode/utypes.h>

namespace thawslip::unicode {

/// ICU fails only when its data is missing or memory runs out: the system failed, so this throws.
inline void require_success(UErrorCode error, const char* what) {
    if (U_FAILURE(error)) {
        throw std::runtime_error{std::string{"ICU: "} + what + ": " + u_errorName(error)};
    }
}

} // namespace thawslip::unicode
