#pragma once

#include "app/commands.h"

namespace thawslip::app {

/// Reads the command line and runs the command it names. What the user got wrong is said on
/// `console.err`; failures of the system are thrown as SystemFailure.
ExitStatus run(int argc, const char* const* argv, Console console);

} // namespace thawslip::app
