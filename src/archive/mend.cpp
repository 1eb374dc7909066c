#include "archive/archive.h"
#include "archive/columns.h"
#include "archive/copy.h"
#include "archive/draft.h"
#include "archive/rows.h"
#include "archive/soundness.h"

#include <cerrno>
#include <cstring>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

namespace thawslip::archive {
namespace {

struct FinishBackup {
    void operator()(sqlite3_backup* backup) const { sqlite3_backup_finish(backup); }
};

} // namespace

void copy_into(const Database& to, const Database& from) {
    const std::unique_ptr<sqlite3_backup, FinishBackup> backup{
        sqlite3_backup_init(to.handle(), "main", from.handle(), "main")};
    // All pages in one step: a copy in pieces starts again whenever somebody writes (SQLite,
    // "SQLite Backup API").
    const int code = backup ? sqlite3_backup_step(backup.get(), -1) : SQLITE_ERROR;
    if (code != SQLITE_DONE) {
        throw ArchiveFailure{fault_of(code, to.path(), sqlite3_errstr(code))};
    }
}

std::vector<std::string> Archive::check() {
    const Question question{*connection_};
    return faults_in(*connection_);
}

std::vector<StoredDay> Archive::days() {
    std::vector<DayKey> keys;
    {
        const Question question{*connection_};
        auto& rows = connection_->statement("SELECT id FROM day ORDER BY id");
        while (rows.next()) {
            keys.push_back(DayKey{rows.integer(0)});
        }
    }
    std::vector<StoredDay> all;
    for (const auto key : keys) {
        all.push_back(day(key));
    }
    return all;
}

std::vector<PackageRecord> Archive::packages(DayKey day) {
    const Question question{*connection_};
    return packages_of(*connection_, static_cast<std::int64_t>(day));
}

void Archive::put_right(DayKey day, int position, const PackageRecord& described) {
    const Question question{*connection_};
    auto& update =
        connection_
            ->statement("UPDATE package SET dish = ?, words = ?, servings = ?, bags = ?, allergens "
                        "= ?, classes = ? WHERE day = ? AND position = ?")
            .with(described.dish)
            .with(described.words)
            .with(described.servings)
            .with(static_cast<std::int64_t>(described.bags.size()));
    if (described.food) {
        update.with(lines_of(described.food->allergens)).with(lines_of(described.food->classes));
    } else {
        update.with_nothing().with_nothing();
    }
    update.with(static_cast<std::int64_t>(day)).with(position).run();
}

void Archive::back_up(const std::string& file) {
    if (::access(file.c_str(), F_OK) == 0) {
        throw ArchiveFailure{{ArchiveFault::Kind::CannotOpen,
                              fmt::format("cannot make {}: {}", file, std::strerror(EEXIST))}};
    }
    const Draft draft{file};
    {
        const Database copy_of_it{draft.name(), Access::ReadWrite, std::chrono::seconds{5}};
        copy_of_it.run("PRAGMA synchronous = FULL");
        copy_into(copy_of_it, connection_->database());
    }
    draft.take_name();
}

} // namespace thawslip::archive
