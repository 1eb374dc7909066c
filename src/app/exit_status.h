#pragma once

#include <stdexcept>

namespace thawslip::app {

/// What the program tells the shell.
enum class ExitStatus {
    Done = 0,
    Refused = 1,      ///< the input is wrong, or does not fit
    Usage = 2,        ///< the command line is wrong
    SystemFailed = 3, ///< disk, permission, archive
};

/// The world failed: a disk is full, a folder cannot be written. Thrown where it happens, caught
/// in main, which prints its words and leaves with SystemFailed.
class SystemFailure : public std::runtime_error {
public:
    using std::runtime_error::runtime_error;
};

} // namespace thawslip::app
