#include "archive/archive.h"
#include "archive/copy.h"
#include "archive/draft.h"
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
