#pragma once

#include "app/commands.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::app {

/// A file or folder that a command is to write.
struct Output {
    std::string file;                        ///< "-": standard output; empty: none
    std::vector<std::string> endings;        ///< of which its name has one; none: any name
    std::vector<std::string> made_from = {}; ///< what the user named for it: days, stock, layout
};

inline const std::vector<std::string> drawing_endings = {".pdf", ".svg"};
/// A print can also be had in words: each sheet's items and where they stand (render/dump.h).
inline const std::vector<std::string> print_endings = {".pdf", ".svg", ".txt"};

/// What a print writes, and what it is made from.
Output output_of(const PrintOptions& options);

/// What a file is that must not be written, "the settings' file"; empty where it may be.
std::string why_kept(const std::string& file, const Output& output, const Settings& settings);

/// Holds every command that writes to one rule, before any work is done. Never written, by
/// whatever name or link and though it is not there yet: what the output is made from, the
/// settings, the archive in use and the one at the usual place with their companions (SQLite's
/// -wal, -shm and -journal), any other archive, and what comes with the program.
/// Says why not on `console.err`.
/// \returns nothing where it may be written; else the status to leave with
std::optional<ExitStatus> refuse_output(const Output& output, const Settings& settings,
                                        Console console);

/// The file of sheet `sheet` (from 0): SVG has no pages, and the second sheet goes to name-2.svg.
std::string sheet_file(const std::string& output, int sheet);

/// The same for the further files of `sheets` sheets, whose names nobody typed: they must not be
/// others' files either, unless that was asked for. Files like further sheets of an earlier, larger
/// print are named: they do not belong to this one.
std::optional<ExitStatus> refuse_sheets(const Output& output, int sheets, Overwrite overwrite,
                                        const Settings& settings, Console console);

} // namespace thawslip::app
