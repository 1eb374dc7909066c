#pragma once

#include "app/commands.h"
#include "app/files/settings_file.h"
#include "archive/archive.h"

#include <chrono>
#include <functional>
#include <string>

namespace thawslip::app {

// Where the archive is on a server, this station has a copy of it in a file: every command reads
// and writes that, whether the server is there or not. Before and after, both are brought together
// (archive/exchange.h), and printing never waits longer than a few seconds for it.

/// The station's file for the archive at an address; empty where no place for it is known.
std::string station_file(const std::string& address);

/// Brings both together, and says on `console.err` what a cook must know: that the server is away,
/// and of when the copy is; which bags cannot be sent. A server that was away is left alone for
/// half a minute.
void exchange_with_server(const Settings& settings, Console console);

/// The same at once, for who knows that either has something new, and without a word.
/// \returns whether the server was there to the end
bool exchange_quietly(const Settings& settings);

/// Runs a command between two exchanges, the second only where it changed something.
ExitStatus with_server(const std::function<ExitStatus(const Settings&, Console)>& command,
                       const Settings& settings, Console console);

} // namespace thawslip::app
