#pragma once

#include "base/system_failure.h"

namespace thawslip::app {

/// What the program tells the shell. A SystemFailure is caught in main, which prints its words and
/// leaves with SystemFailed.
enum class ExitStatus {
    Done = 0,
    Refused = 1,      ///< the input is wrong, or does not fit
    Usage = 2,        ///< the command line is wrong
    SystemFailed = 3, ///< disk, permission, archive
};

} // namespace thawslip::app
