#pragma once

#include "app/commands.h"
#include "app/day_files.h"
#include "app/output_guard.h"
#include "base/result.h"
#include "layout/compose.h"
#include "spool/printer.h"
#include "wording/print.h"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::app {

struct LaidOut;

/// One label or card to be made: what it is of, by places in `Days`. Its words are made from
/// there when they are needed.
struct PrintOf {
    wording::Kind kind = wording::Kind::BagLabel;
    std::uint32_t day = 0;
    std::uint32_t package = 0; ///< of that day; for a list: which of the job's lists
    std::uint32_t bag = 0;     ///< of that package; for a print of the whole dish its first one
};

/// Prints to be made in one file.
struct Job {
    std::vector<PrintOf> prints;
    std::vector<wording::Print> lists; ///< what door lists and day sheets say: they are few
    std::string title;                 ///< of the document
    std::string noun;                  ///< what is counted: "label", "card"
    std::string default_stock;         ///< where no stock is named
    layout::Which which = layout::Which::Every;
    std::string language = "en"; ///< of its words: ISO 639-1
    std::string recorded_as;     ///< what the archive calls it; empty: not kept there
};

/// Lays the job out, draws it, writes and prints it as `options` say; says what was printed, or
/// everything that stands against it.
/// \throws Raced (app/recording.h) where another program has given the days' ids away meanwhile
ExitStatus run_job(const Job& job, const Days& days, const PrintOptions& options,
                   const Settings& settings, Console console);

/// Draws a job that is laid out and writes it whole, as the ending of `output` says.
void write_job(const std::string& output, const LaidOut& laid_out, const Job& job);

/// Draws a job that is laid out, writes it into `output` and hands it to `printer`; either may be
/// absent.
ExitStatus deliver_job(const LaidOut& laid_out, const Job& job, const std::string& output,
                       const std::optional<spool::Printer>& printer, Console console);

/// Holds a print's destination to what can be: a file that may be written, a printer that is there.
/// \returns the printer, if one is wanted, or the status to leave with
Result<std::optional<spool::Printer>, ExitStatus>
usable_destination(const Output& output, const std::optional<std::string>& printer,
                   const Settings& settings, Console console);

} // namespace thawslip::app
