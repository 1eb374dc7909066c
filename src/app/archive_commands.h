#pragma once

#include "app/commands.h"
#include "archive/archive.h"
#include "service/freezer/freezer_list.h"
#include "service/freezer/freezer_next.h"
#include "service/reprint/reprint.h"

#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::app {

struct ReprintOptions {
    service::ReprintQuestion question;
    service::ReprintLook look;
    std::string output;                 ///< as PrintOptions
    std::string called = {};            ///< the same
    std::optional<std::string> printer; ///< the same
    Overwrite overwrite = Overwrite::No;
};

ExitStatus reprint(const ReprintOptions& options, const Settings& settings, Console console);

struct FreezerListOptions {
    service::FreezerQuestion question;
    std::optional<std::string> without; ///< what a guest may not eat, as typed
};

ExitStatus freezer_list(const FreezerListOptions& options, AnswerAs answer,
                        const Settings& settings, Console console);
ExitStatus freezer_set(const std::vector<std::string>& typed, WhichOfSeveral which,
                       archive::State state, const Settings& settings, Console console);
ExitStatus freezer_move(const std::vector<std::string>& typed, WhichOfSeveral which,
                        const std::string& place, const Settings& settings, Console console);
ExitStatus freezer_renamed(const std::string& before, const std::string& now,
                           const Settings& settings, Console console);
ExitStatus freezer_undo(const Settings& settings, Console console);
ExitStatus freezer_history(const std::vector<std::string>& typed, AnswerAs answer,
                           const Settings& settings, Console console);

struct FreezerNextOptions {
    service::NextQuestion question;
    std::optional<std::string> without = {}; ///< as FreezerListOptions
};

ExitStatus freezer_next(const FreezerNextOptions& options, AnswerAs answer,
                        const Settings& settings, Console console);

ExitStatus archive_check(const Settings& settings, Console console);
/// Puts a backup into the archive's place; what was there is kept beside.
ExitStatus archive_restore(const std::string& file, const Settings& settings, Console console);
/// Rebuilds what can be rebuilt, and names what cannot.
ExitStatus archive_repair(const Settings& settings, Console console);
ExitStatus archive_backup(const std::string& file, const Settings& settings, Console console);
ExitStatus archive_merge(const std::string& file, archive::Kitchens kitchens,
                         const Settings& settings, Console console);
/// Brings this station's copy and the archive on a server together: app/server_archive.h.
ExitStatus archive_send(const Settings& settings, Console console);
/// Shows what makes a server ready for archives: archive/server_sql.h.
ExitStatus archive_sql(const Settings& settings, Console console);
/// The archive as a folder of plain TOML, and back: see app/archive_folder.h.
ExitStatus archive_export(const std::string& folder, const Settings& settings, Console console);
ExitStatus archive_import(const std::string& folder, archive::Kitchens kitchens,
                          const Settings& settings, Console console);

} // namespace thawslip::app
