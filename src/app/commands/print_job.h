#pragma once

#include "app/commands.h"
#include "app/files/output_guard.h"
#include "base/result.h"
#include "service/print/printing.h"
#include "spool/printer.h"

#include <optional>
#include <string>
#include <string_view>

namespace thawslip::app {

/// Writes a print, prints it and remembers it as `options` say; says what was printed, or
/// everything that stands against it.
/// \throws Raced (app/commands/recording.h) where another program has given the days' ids away
/// meanwhile
ExitStatus put_out(const service::Printing& printing, const PrintOptions& options,
                   const Settings& settings, Console console);

/// Draws a job that is laid out, writes it into `output` and hands it to `printer`; either may be
/// absent.
ExitStatus deliver_job(const service::LaidOut& laid_out, const service::Job& job,
                       const std::string& output, const std::optional<spool::Printer>& printer,
                       Console console);

/// What was printed and what to mind.
/// \param prints "3 labels" \param output what the file is called; empty: there is none
/// \param remark what else there is to say of it
std::string closing_line(const service::LaidOut& laid_out, const std::string& prints,
                         const std::string& output, std::string_view remark = {});

/// The printer of `--print`: by its name, or for an empty one as the settings have it for such
/// prints.
std::optional<std::string> printer_by_job(const std::optional<std::string>& named,
                                          service::What what, const Settings& settings);

/// Holds a print's destination to what can be: a file that may be written, a printer that is there.
/// \returns the printer, if one is wanted, or the status to leave with
Result<std::optional<spool::Printer>, ExitStatus>
usable_destination(const Output& output, const std::optional<std::string>& printer,
                   const Settings& settings, Console console);

} // namespace thawslip::app
