#pragma once

#include "app/commands.h"

#include <functional>

namespace CLI {
class App;
}

namespace thawslip::app {

/// Adds `reprint`, `freezer` and `archive`; the one that is named on the command line is put into
/// `chosen`.
void add_archive_commands(CLI::App& app,
                          std::function<ExitStatus(const Settings&, Console)>& chosen);

} // namespace thawslip::app
