#pragma once

#include "app/commands.h"

#include <functional>

namespace CLI {
class App;
}

namespace thawslip::app {

/// What the parsed command line asks for; run after parsing, so that a fault in a later option is
/// found before anything happens.
using Command = std::function<ExitStatus(const Settings&, Console)>;

/// Adds what every printing command takes: the days, the stock, where the print goes.
void add_print_options(CLI::App& command, PrintOptions& options);

/// Adds `lists` with its options to the program; when it is given, `chosen` becomes it.
void add_lists(CLI::App& app, Command& chosen);

/// Adds `plan` with its options to the program; when it is given, `chosen` becomes it.
void add_plan(CLI::App& app, Command& chosen);

/// Adds `reprint`, `freezer` and `archive`; the one that is named on the command line is put into
/// `chosen`.
void add_archive_commands(CLI::App& app, Command& chosen);

} // namespace thawslip::app
