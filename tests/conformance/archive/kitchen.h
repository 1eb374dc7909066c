#pragma once

#include "support/command.h"

#include <doctest/doctest.h>
#include <string>
#include <thread>
#include <vector>

namespace thawslip::test_support {

/// A kitchen with an archive of its own, at 14:05 UTC on 17 Oct 2026. At its end SQLite's own
/// shell must find nothing wrong with the archive (SQLite, "PRAGMA Statements", integrity_check
/// and foreign_key_check).
struct Kitchen {
    ScratchFolder folder;
    std::string archive = folder / "archive.db";
    std::string now = "1792245900"; ///< seconds since 1970

    Kitchen() {
        write_file(folder / "day.toml", read_file(THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml"));
    }
    ~Kitchen() {
        if (std::filesystem::exists(archive)) {
            CHECK(sql("PRAGMA integrity_check; PRAGMA foreign_key_check") == "ok\n");
        }
    }
    Kitchen(const Kitchen&) = delete;
    Kitchen& operator=(const Kitchen&) = delete;

    Outcome operator()(const std::string& command) const { return run(line(command)); }

    /// What a shell is told so that it runs a command here.
    std::string line(const std::string& command) const {
        return "export TZ=UTC SOURCE_DATE_EPOCH=" + now +
               " XDG_CONFIG_HOME=/nonexistent XDG_DATA_HOME=/nonexistent; cd " +
               shell_word(folder.path().string()) + "; " THAWSLIP_PROGRAM " --archive " +
               shell_word(archive) + " " + command;
    }
    /// What the commands come to, all run at the same moment.
    std::vector<Outcome> at_once(const std::vector<std::string>& commands) const {
        std::vector<Outcome> outcomes(commands.size());
        std::vector<std::thread> threads;
        for (std::size_t i = 0; i < commands.size(); ++i) {
            threads.emplace_back(
                [this, i, &commands, &outcomes] { outcomes[i] = (*this)(commands[i]); });
        }
        for (auto& thread : threads) {
            thread.join();
        }
        return outcomes;
    }
    std::string sql(const std::string& statements) const {
        return run("sqlite3 " + shell_word(archive) + " " + shell_word(statements)).out;
    }
    std::string file(const std::string& name) const { return read_file(folder / name); }
    std::string first_id(const std::string& words) const {
        return (*this)("freezer find " + words).out.substr(0, 11);
    }
};

inline bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace thawslip::test_support
