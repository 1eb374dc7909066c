#include "archive/archive.h"
#include "archive/connection.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <fmt/format.h>
#include <sqlite3.h>
#include <unistd.h>

namespace thawslip::archive {
namespace {

struct FinishBackup {
    void operator()(sqlite3_backup* backup) const { sqlite3_backup_finish(backup); }
};

void make_backup_file(const std::string& file) {
    const int descriptor = ::open(file.c_str(), O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0600);
    if (descriptor < 0) {
        throw ArchiveFailure{{ArchiveFault::Kind::CannotOpen,
                              fmt::format("cannot make {}: {}", file, std::strerror(errno))}};
    }
    ::close(descriptor);
}

void copy(const Database& from, const Database& to) {
    const std::unique_ptr<sqlite3_backup, FinishBackup> backup{
        sqlite3_backup_init(to.handle(), "main", from.handle(), "main")};
    // All pages in one step: a copy in pieces starts again whenever somebody writes (SQLite,
    // "SQLite Backup API").
    const int code = backup ? sqlite3_backup_step(backup.get(), -1) : SQLITE_ERROR;
    if (code != SQLITE_DONE) {
        throw ArchiveFailure{fault_of(code, to.path(), sqlite3_errstr(code))};
    }
}

} // namespace

std::vector<std::string> Archive::check() {
    const Question question{*connection_};
    std::vector<std::string> wrong;
    auto integrity = connection_->database().prepare("PRAGMA integrity_check");
    while (integrity.next()) {
        if (integrity.text(0) != "ok") {
            wrong.push_back(integrity.text(0));
        }
    }
    auto keys = connection_->database().prepare("PRAGMA foreign_key_check");
    while (keys.next()) {
        wrong.push_back(fmt::format("row {} of {} names a row of {} that is not there",
                                    keys.integer(1), keys.text(0), keys.text(2)));
    }
    auto ids = connection_->database().prepare(
        "SELECT id FROM bag WHERE (SELECT count(*) FROM bag_id WHERE bag = bag.id AND newest = 1) "
        "<> 1");
    while (ids.next()) {
        wrong.push_back(fmt::format("bag {} has no id, or several", ids.integer(0)));
    }
    return wrong;
}

void Archive::back_up(const std::string& file) {
    make_backup_file(file);
    try {
        const Database copy_of_it{file, Access::ReadWrite, std::chrono::seconds{5}};
        copy_of_it.run("PRAGMA synchronous = FULL");
        copy(connection_->database(), copy_of_it);
    } catch (...) {
        ::unlink(file.c_str());
        throw;
    }
}

} // namespace thawslip::archive
