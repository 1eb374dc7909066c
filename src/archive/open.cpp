#include "archive/address.h"
#include "archive/archive.h"
#include "archive/copy.h"
#include "archive/draft.h"
#include "archive/tables/connection.h"
#include "archive/tables/schema.h"
#include "base/folder.h"
#include "base/place.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <fmt/format.h>
#include <sys/stat.h>
#include <thread>
#include <unistd.h>

namespace thawslip::archive {
namespace {

namespace fs = std::filesystem;
using Kind = ArchiveFault::Kind;

[[noreturn]] void fail(Kind kind, std::string message) {
    throw ArchiveFailure{{kind, std::move(message)}};
}

/// What is printed says what a household eats: nobody else need read it. SQLite gives the log
/// beside it the same mode.
void make_file(const std::string& path) {
    make_folders(folder_of(path));
    const int descriptor = ::open(path.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    if (descriptor >= 0) {
        ::close(descriptor);
        sync_folder(folder_of(path));
    } else if (errno != EEXIST) {
        fail(Kind::CannotOpen,
             fmt::format("cannot make the archive {}: {}", path, std::strerror(errno)));
    }
}

void require_file(const std::string& path, Mode mode) {
    struct stat status {};
    if (::stat(path.c_str(), &status) == 0) {
        if (!S_ISREG(status.st_mode)) {
            fail(Kind::NotOurs, fmt::format("{} is no file", path));
        }
        if (::access(path.c_str(), R_OK) != 0) { // SQLite would say only that it could not
            fail(Kind::CannotOpen,
                 fmt::format("cannot open the archive {}: {}", path, std::strerror(errno)));
        }
    } else if (mode == Mode::Write) {
        make_file(path);
    } else if (errno == ENOENT || errno == ENOTDIR) {
        fail(Kind::Missing,
             fmt::format("there is no archive at {}: nothing has been printed yet", path));
    } else {
        fail(Kind::CannotOpen,
             fmt::format("cannot open the archive {}: {}", path, std::strerror(errno)));
    }
}

/// An empty file that was there may be readable by all, as `touch` makes it.
void keep_from_others(const std::string& path) {
    if (::chmod(path.c_str(), 0600) != 0) {
        fail(Kind::CannotOpen,
             fmt::format("{} is readable by others, and that cannot be changed: {}", path,
                         std::strerror(errno)));
    }
}

/// Turning the log on needs the file for itself for a moment, and SQLite does not wait for it as
/// it waits for a lock ("Write-Ahead Logging", activating): so this does.
void turn_log_on(const Database& database, std::chrono::milliseconds patience) {
    constexpr std::chrono::milliseconds pause{10};
    for (auto waited = std::chrono::milliseconds{0};; waited += pause) {
        try {
            database.run("PRAGMA journal_mode = WAL");
            return;
        } catch (const ArchiveFailure& failure) {
            if (failure.fault().kind != Kind::Busy || waited >= patience) {
                throw;
            }
        }
        std::this_thread::sleep_for(pause);
    }
}

Database open_for_writing(const std::string& path, std::chrono::milliseconds patience) {
    Database database{path, Access::ReadWrite, patience};
    const auto version = schema_version(database, schema_steps().size());
    if (version == 0) {
        keep_from_others(path);
        turn_log_on(database, patience);
    }
    // FULL: the log is synced after every commit. NORMAL would keep the file consistent, but lose
    // the last prints with the power (SQLite, "PRAGMA Statements", synchronous,
    // sqlite.org/pragma.html#pragma_synchronous; "Write-Ahead Logging", Performance Considerations,
    // sqlite.org/wal.html). Keys are only enforced where that is asked for ("SQLite Foreign Key
    // Support", 2, sqlite.org/foreignkeys.html).
    database.run("PRAGMA synchronous = FULL");
    // A step that makes a table anew drops one that others refer to: keys come after it ("ALTER
    // TABLE", "Making Other Kinds Of Table Schema Changes").
    migrate(database, schema_steps());
    database.run("PRAGMA foreign_keys = ON");
    return database;
}

/// Where a log is left beside it, somebody may be changing it.
bool is_quiet(const std::string& path) {
    std::error_code error;
    return !fs::exists(path + "-wal", error) || fs::file_size(path + "-wal", error) == 0;
}

/// \returns its schema
std::size_t require_prints(const Database& database) {
    const auto version = schema_version(database, schema_steps().size());
    if (version == 0) {
        fail(Kind::Missing,
             fmt::format("the archive {} is empty: nothing has been printed yet", database.path()));
    }
    return version;
}

fs::file_time_type last_written(const std::string& path) {
    std::error_code error;
    return fs::last_write_time(path, error);
}

/// Where it truly is: beside that SQLite keeps its log, whatever link leads there.
std::string place_of(const std::string& path) {
    auto place = end_of_links(path);
    if (!place) {
        fail(Kind::CannotOpen,
             fmt::format("cannot open the archive {}: {}", path, std::strerror(ELOOP)));
    }
    return *std::move(place);
}

/// What nobody changes is read without a lock or a log made beside it. Where somebody changed it
/// meanwhile, it is read again as others' changes allow.
Database open_copy(const std::string& path, std::chrono::milliseconds patience) {
    const auto copy_as = [&](Access access) {
        const Database database{path, access, patience};
        require_prints(database);
        return copy_in_memory(database, patience);
    };
    const auto written = last_written(path);
    auto copy = copy_as(is_quiet(path) ? Access::Unchanging : Access::ReadOnly);
    if (!is_quiet(path) || last_written(path) != written) {
        copy = copy_as(Access::ReadOnly);
    }
    migrate(copy, schema_steps());
    return copy;
}

/// A log-keeping database in a folder that cannot be written opens only as one that nobody
/// changes (SQLite, "Write-Ahead Logging", read-only databases). Where a log is left beside it,
/// that would read nonsense.
Database open_as_it_is(const std::string& path, std::chrono::milliseconds patience) {
    const bool writable = ::access(folder_of(path).c_str(), W_OK) == 0;
    return {path, !writable && is_quiet(path) ? Access::Unchanging : Access::ReadOnly, patience};
}

/// On a full disk not even the log's index can be made, which readers make too: then an archive
/// that nobody is writing is read without.
Database open_on_any_disk(const std::string& path, std::chrono::milliseconds patience) {
    try {
        auto database = open_as_it_is(path, patience);
        database.number("SELECT count(*) FROM sqlite_schema");
        return database;
    } catch (const ArchiveFailure& failure) {
        const auto kind = failure.fault().kind;
        if ((kind != Kind::DiskFull && kind != Kind::DiskFailed) || !is_quiet(path)) {
            throw;
        }
        return {path, Access::Unchanging, patience};
    }
}

Database open_for_reading(const std::string& path, std::chrono::milliseconds patience) {
    auto database = open_on_any_disk(path, patience);
    const auto version = require_prints(database);
    return version == schema_steps().size() ? std::move(database)
                                            : open_for_writing(path, patience);
}

Connection connect(const std::string& written, Deadline deadline) {
    const auto address = parse_address(written);
    if (!address) {
        fail(Kind::CannotOpen, address.fault());
    }
    return Connection{Server{address.value(), deadline}};
}

/// All that a server's archive holds, in memory: what is done to it reaches nobody.
Connection copy_of(Connection& connection, std::chrono::milliseconds patience) {
    auto copy = Database::in_memory(connection.place(), patience);
    migrate(copy, schema_steps());
    return Connection{std::move(copy)};
}

} // namespace

Archive Archive::open_on_server(const std::string& address, Mode mode,
                                std::chrono::milliseconds patience) {
    Archive there{std::make_unique<Connection>(
        connect(address, {std::min<std::chrono::milliseconds>(patience, Deadline{}.connect),
                          std::max<std::chrono::milliseconds>(patience, Deadline{}.connect)}))};
    if (mode != Mode::Copy) {
        return there;
    }
    Archive copy{std::make_unique<Connection>(copy_of(*there.connection_, patience))};
    copy.merge(there.contents());
    return copy;
}

Result<Archive, ArchiveFault> Archive::reach(const std::string& address,
                                             std::chrono::milliseconds budget) {
    try {
        const auto end = std::chrono::steady_clock::now() + budget;
        return Archive{std::make_unique<Connection>(
            connect(address, {std::min<std::chrono::milliseconds>(budget, Deadline{}.connect),
                              budget, end}))};
    } catch (const ArchiveFailure& failure) {
        return Failure{failure.fault()};
    }
}

Result<Archive, ArchiveFault> Archive::open(const std::string& path, Mode mode,
                                            std::chrono::milliseconds patience) {
    try {
        if (is_address(path)) {
            return open_on_server(path, mode, patience);
        }
        const auto place = place_of(path);
        require_file(place, mode);
        auto database = mode == Mode::Write  ? open_for_writing(place, patience)
                        : mode == Mode::Copy ? open_copy(place, patience)
                                             : open_for_reading(place, patience);
        return Archive{std::make_unique<Connection>(std::move(database))};
    } catch (const ArchiveFailure& failure) {
        return Failure{failure.fault()};
    }
}

std::optional<ArchiveFault> Archive::back_up(const std::string& path, const std::string& file,
                                             std::chrono::milliseconds patience) {
    try {
        if (is_address(path)) {
            refuse_file_work(path);
        }
        const auto place = place_of(path);
        require_file(place, Mode::Read);
        auto database = open_on_any_disk(place, patience);
        require_prints(database);
        Archive{std::make_unique<Connection>(std::move(database))}.back_up(file);
        return std::nullopt;
    } catch (const ArchiveFailure& failure) {
        return failure.fault();
    }
}

Archive::Archive(std::unique_ptr<Connection> connection) : connection_{std::move(connection)} {}
Archive::Archive(Archive&&) noexcept = default;
Archive& Archive::operator=(Archive&&) noexcept = default;
Archive::~Archive() = default;

} // namespace thawslip::archive
