#pragma once

#include "app/command_line/command_description.h"
#include "app/commands.h"

namespace thawslip::app {

/// Reads the command line and runs the command it names. What the user got wrong is said on
/// `console.err`; failures of the system are thrown as SystemFailure.
ExitStatus run(int argc, const char* const* argv, Console console);

/// Reads the command line as `run` does, says what is wrong with it, and goes no further.
ExitStatus try_out(int argc, const char* const* argv, Console console);

/// The program with all its commands and options.
CommandDescription program_description();

} // namespace thawslip::app
