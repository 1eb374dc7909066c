#pragma once

#include "app/commands.h"
#include "app/exit_status.h"
#include "base/result.h"
#include "spool/printer.h"

#include <functional>
#include <optional>
#include <string>

namespace thawslip::app {

/// The printer of `--print`, looked for before any work is done; nothing where none is asked for.
/// What stands against it is said on `console.err`.
/// \returns the printer, or the status to leave with
Result<std::optional<spool::Printer>, ExitStatus>
wanted_printer(const std::optional<std::string>& name, Console console);

/// Why there is no printer to print on, in a line.
std::string why_no_printer(const spool::Fault& fault);

/// Writes a document into the file that is named.
using WriteDocument = std::function<void(const std::string& file)>;

/// Writes a document into `output` (empty: into no file) and hands it to the printer, if one is
/// wanted, once all of it is on disk: the file itself where that is a PDF, else a temporary one.
/// A printer that refuses is told, and what was written stays.
ExitStatus deliver(const WriteDocument& write, const std::string& output,
                   const std::optional<spool::Printer>& printer, const spool::Ticket& ticket,
                   Console console);

} // namespace thawslip::app
