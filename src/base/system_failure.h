#pragma once

#include <stdexcept>

namespace thawslip {

/// The system failed: a disk is full, a folder cannot be read, an archive is broken. Nothing that
/// the cook wrote, so no diagnostic. Thrown where it happens; its words are shown as they are.
class SystemFailure : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

} // namespace thawslip
