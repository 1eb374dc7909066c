#include "archive/restore.h"

#include "archive/address.h"
#include "archive/copy.h"
#include "archive/draft.h"
#include "archive/events.h"
#include "archive/tables/connection.h"
#include "archive/tables/rows.h"
#include "archive/tables/schema.h"
#include "archive/tables/soundness.h"
#include "base/folder.h"
#include "base/place.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fmt/format.h>
#include <optional>
#include <thread>
#include <unistd.h>

namespace thawslip::archive {
namespace {

namespace fs = std::filesystem;
using Kind = ArchiveFault::Kind;
using Patience = std::chrono::milliseconds;

[[noreturn]] void refuse_to_restore(Kind kind, std::string message) {
    throw ArchiveFailure{{kind, std::move(message)}};
}

constexpr std::array companions = {"-wal", "-shm", "-journal"};

bool is_there(const std::string& path) {
    std::error_code error;
    return fs::exists(fs::symlink_status(path, error));
}

/// Where nobody writes, nothing need be made beside it to read it.
Access access_to(const std::string& path) {
    std::error_code error;
    const bool quiet =
        !fs::exists(path + "-wal", error) || fs::file_size(path + "-wal", error) == 0;
    return quiet ? Access::Unchanging : Access::ReadOnly;
}

/// All that the file holds, in memory, migrated to this program's schema.
Database read_whole(const std::string& path, Patience patience) {
    const Database file{path, access_to(path), patience};
    if (schema_version(file, schema_steps().size()) == 0) {
        refuse_to_restore(Kind::Missing, fmt::format("{} is empty: no archive is in it", path));
    }
    auto copy = copy_in_memory(file, patience);
    migrate(copy, schema_steps());
    return copy;
}

/// The archive at a place that nobody else can use meanwhile, and whose log is written into it.
/// What is so damaged that SQLite cannot do this is taken as it lies there.
class Held {
public:
    Held(const std::string& path, Patience patience) : path_{path} {
        if (!is_there(path)) {
            return;
        }
        try {
            database_.emplace(path, Access::ReadWrite, patience);
            write_log_back(patience);
            database_->run("BEGIN EXCLUSIVE");
        } catch (const ArchiveFailure& failure) {
            if (failure.fault().kind != Kind::Damaged && failure.fault().kind != Kind::NotOurs) {
                throw;
            }
            database_.reset();
        }
    }

    /// \returns where the archive of before is now; empty: there was nothing
    std::string give_way_to(const Draft& draft) {
        const auto kept = free_name();
        const bool there = is_there(path_);
        if (there && ::link(path_.c_str(), kept.c_str()) != 0) {
            refuse_to_restore(Kind::CannotOpen,
                              fmt::format("cannot keep {} as {}: {}; nothing was changed", path_,
                                          kept, std::strerror(errno)));
        }
        bool left_behind = false;
        for (const char* companion : companions) {
            left_behind |= ::rename((path_ + companion).c_str(), (kept + companion).c_str()) == 0;
        }
        draft.take_place();
        return there || left_behind ? kept : std::string{};
    }

private:
    /// Writes what the log holds into the file and keeps no log any more. As turning it on, it
    /// needs the file for itself, and SQLite does not wait for that.
    void write_log_back(Patience patience) {
        constexpr Patience pause{10};
        for (Patience waited{0};; waited += pause) {
            try {
                auto mode = database_->prepare("PRAGMA journal_mode = DELETE");
                if (mode.next() && mode.text(0) == "delete") {
                    return;
                }
            } catch (const ArchiveFailure& failure) {
                if (failure.fault().kind != Kind::Busy) {
                    throw;
                }
            }
            if (waited >= patience) {
                refuse_to_restore(Kind::Busy,
                                  fmt::format("another program uses the archive {}; nothing was "
                                              "changed, try again when it is done",
                                              path_));
            }
            std::this_thread::sleep_for(pause);
        }
    }

    std::string free_name() const {
        for (int n = 1;; ++n) {
            auto name = fmt::format("{}.before-{}", path_, n);
            const bool taken =
                is_there(name) || std::ranges::any_of(companions, [&name](const char* companion) {
                    return is_there(name + companion);
                });
            if (!taken) {
                return name;
            }
        }
    }

    std::string path_;
    std::optional<Database> database_;
};

/// Writes it as an archive that keeps a log, all of it on the disk.
void write(const Database& database, const Draft& draft, Patience patience) {
    const Database file{draft.name(), Access::ReadWrite, patience};
    file.run("PRAGMA synchronous = FULL");
    copy_into(file, database);
    file.run("PRAGMA journal_mode = WAL");
}

std::string end_of(const std::string& path) {
    auto end = end_of_links(path);
    if (!end) {
        refuse_to_restore(Kind::CannotOpen,
                          fmt::format("cannot open {}: its links go round", path));
    }
    return *std::move(end);
}

/// What is in `some` and not in `others`.
std::vector<std::string> without(const std::vector<std::string>& some,
                                 const std::vector<std::string>& others) {
    std::vector<std::string> rest;
    std::ranges::copy_if(some, std::back_inserter(rest), [&others](const std::string& one) {
        return std::ranges::find(others, one) == others.end();
    });
    return rest;
}

} // namespace

Replaced restore(const std::string& path, const std::string& backup, Patience patience) {
    if (is_address(path)) {
        refuse_file_work(path);
    }
    const auto place = end_of(path);
    if (!is_there(backup)) {
        refuse_to_restore(Kind::Missing, fmt::format("there is no file {}", backup));
    }
    if (fs::is_directory(end_of(backup))) {
        refuse_to_restore(Kind::NotOurs, fmt::format("{} is a folder, and no backup", backup));
    }
    if (is_same_place(place, backup)) {
        refuse_to_restore(Kind::Failed,
                          fmt::format("{} is the archive itself, no backup of it", backup));
    }
    Connection whole{read_whole(end_of(backup), patience)};
    if (const auto wrong = faults_in(whole); !wrong.empty()) {
        refuse_to_restore(Kind::Damaged,
                          fmt::format("the backup {} is damaged ({}); nothing was changed", backup,
                                      wrong.front()));
    }
    make_folders(folder_of(place)); // on a new computer there is none yet
    const Draft draft{place};
    write(whole.database(), draft, patience);
    Held before{place, patience};
    return {before.give_way_to(draft), {}, {}};
}

/// A copy of an archive that is being rebuilt.
class Rebuild {
public:
    explicit Rebuild(Database copy)
        : archive_{Archive{std::make_unique<Connection>(std::move(copy))}} {}

    Archive& archive() { return archive_; }
    const Database& database() const { return archive_.connection_->database(); }
    /// Ids follow from batch and number, states from events.
    void put_bags_right() {
        auto& connection = *archive_.connection_;
        const Question question{connection};
        put_ids_right(connection);
        auto bags = connection.database().prepare("SELECT DISTINCT bag FROM bag_event");
        while (bags.next()) {
            find_state(connection, bags.integer(0));
        }
    }
    bool has_rotten_descriptions() {
        return !faults_of_descriptions(*archive_.connection_).empty();
    }

private:
    Archive archive_;
};

Replaced repair(const std::string& path,
                const std::function<std::vector<std::string>(Archive&)>& rebuild,
                Patience patience) {
    if (is_address(path)) {
        refuse_file_work(path);
    }
    const auto place = end_of(path);
    if (!is_there(place)) {
        refuse_to_restore(Kind::Missing, fmt::format("there is no archive at {}", path));
    }
    Held held{place, patience};
    Rebuild copy{read_whole(place, patience)};
    const auto before = copy.archive().check();
    make_missing_indexes(copy.database());
    copy.database().run("REINDEX");
    auto repaired =
        copy.has_rotten_descriptions() ? std::vector<std::string>{} : rebuild(copy.archive());
    copy.put_bags_right();
    copy.database().run("INSERT INTO dish_words (dish_words) VALUES ('rebuild')");
    const auto left = copy.archive().check();
    for (auto& one : without(before, left)) {
        repaired.push_back(std::move(one));
    }
    if (repaired.empty()) {
        return {{}, {}, left};
    }
    const Draft draft{place};
    write(copy.database(), draft, patience);
    return {held.give_way_to(draft), repaired, left};
}

} // namespace thawslip::archive
