#pragma once

#include "archive/fault.h"
#include "base/result.h"

#include <chrono>
#include <memory>
#include <optional>
#include <string>

namespace thawslip::archive {

/// Notices that an archive in a file has become another, by whichever program or connection of this
/// one, by SQLite's data version ("PRAGMA Statements", data_version,
/// sqlite.org/pragma.html#pragma_data_version), which a connection that stays open sees for the
/// price of a look at the log's index. Only what stations exchange counts (archive/exchange.h):
/// what happened to bags, prints, descriptions; not that somebody asked a server, which is written
/// there too.
///
/// The file is let go now and then for as long as from one look to the next, so that whoever needs
/// it for itself (archive/restore.h) gets it, and one that was put in its place is seen.
class FileChanges {
public:
    explicit FileChanges(std::string file);
    FileChanges(FileChanges&&) noexcept;
    FileChanges& operator=(FileChanges&&) noexcept;
    ~FileChanges();

    /// Whether it holds anything else than at the last look. The first look only remembers: nothing
    /// of a file that is not there. One that cannot be read now holds what it held.
    bool look();
    /// Holds the file no longer, until it is looked at again.
    void let_go();

private:
    struct Open;
    std::string file_;
    std::unique_ptr<Open> open_;
    std::optional<std::string> held_; ///< what was last counted in it
};

/// Hears what a kitchen's server calls (archive/tables/server/schema.cpp, "hints"): that a station
/// has added something. On a connection of its own, on which nothing else is asked.
class ServerChanges {
public:
    /// Listens at the kitchen of an address. \param budget to reach the server
    static Result<ServerChanges, ArchiveFault> listen(const std::string& address,
                                                      std::chrono::milliseconds budget);
    ServerChanges(ServerChanges&&) noexcept;
    ServerChanges& operator=(ServerChanges&&) noexcept;
    ~ServerChanges();

    /// Waits for a call, no longer than `patience`; several at once are one. Throws ArchiveFailure,
    /// Away where the connection is lost: what was called since is not known then.
    bool hears(std::chrono::milliseconds patience);

private:
    struct Listening;
    explicit ServerChanges(std::unique_ptr<Listening> listening);
    std::unique_ptr<Listening> listening_;
};

} // namespace thawslip::archive
